// A reading kind that a person defines in one line: name:unit:direction[:option...].
//
// "flank_wear:mm:lower:level=2:zero=below:0.01" is a wear in mm, keener when lower, compared at
// twice the start, where a zero means less than 0.01 mm. Options: level=L (above 1), zero=refused
// (the default), zero=below:R, largest=X, use=evidence (counts and shares with honest zeros; no
// curve).
#pragma once

#include "base/result.h"
#include "trials/reading_kind.h"

#include <span>
#include <string>
#include <string_view>

namespace keenfall::exchange {

[[nodiscard]] base::Result<trials::ReadingKind> parse_kind_definition(std::string_view text);

// A text that defines this kind.
[[nodiscard]] std::string kind_definition_text(const trials::ReadingKind& kind);

// Among the defined kinds first, then among those known; nullptr when neither has it.
[[nodiscard]] const trials::ReadingKind* find_kind(std::string_view name,
                                                   std::span<const trials::ReadingKind> defined);

// "thread_push, cord_draw, ..." with the defined ones first.
[[nodiscard]] std::string list_of_kinds(std::span<const trials::ReadingKind> defined);

}  // namespace keenfall::exchange
