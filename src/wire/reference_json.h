// Reference tables as documented JSON: phases and their hardness, and hardness scales.
//
// One document in UTF-8, ending in a newline, with the source of every row. Hardness in HV or HRC
// as the keys say. Shapes: docs/wire/phases.schema.json and hardness.schema.json.
#pragma once

#include "materials/hardness.h"
#include "materials/phases.h"

#include <optional>
#include <string>

namespace keenfall::wire {

inline constexpr int kReferenceFormatVersion = 1;

// What was asked about: a phase, or the matrix or carbide of a steel.
struct AskedBody {
  std::string name;
  materials::HardnessSpan hardness;
};

struct PhasesDocument {
  std::string program_version;
  std::vector<AskedBody> asked;  // empty: the table alone
};

[[nodiscard]] std::string phases_to_json(const PhasesDocument& document);

struct HardnessDocument {
  std::string program_version;
  std::optional<materials::HardnessRow> asked;  // one hardness on both scales
};

[[nodiscard]] std::string hardness_to_json(const HardnessDocument& document);

}  // namespace keenfall::wire
