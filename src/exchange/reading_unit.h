// The unit of a reading: how it is named, whether it suits a kind, and conversion within a series.
//
// Units of one dimension convert (materials/units.h). A mass written for a force means the weight
// it has ("104 g" off a scale that was pushed on is 104 gf) and is kept as that force.
#pragma once

#include "trials/reading_kind.h"

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::exchange {

// The unit under its usual name ("grams" of a thread push: "gf"); nullopt when it is not one of the
// kind's dimension.
[[nodiscard]] std::optional<std::string> unit_for_kind(std::string_view written,
                                                       const trials::ReadingKind& kind);

// Force, or a mass that stands for one.
[[nodiscard]] bool is_force_unit(std::string_view written);

// Both units suit the same kind.
[[nodiscard]] double converted_reading(double reading,
                                       const std::string& from,
                                       const std::string& to);

}  // namespace keenfall::exchange
