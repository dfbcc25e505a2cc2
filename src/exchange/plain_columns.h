// The names of our columns as a person would write and say them.
//
// A table may be headed by either: "bevel_angle_per_side_deg" and "bevel angle per side (deg)" are
// one column. Kinds of reading are named so, too: "thread push" for "thread_push".
#pragma once

#include <string>
#include <string_view>

namespace keenfall::exchange {

// For a sheet's header: "bevel angle per side (deg)", "hardness (HRC)", "failed by".
[[nodiscard]] std::string column_label(std::string_view name);

// In a sentence: "bevel angle, degrees per side", "hardness, HRC", "failed by".
[[nodiscard]] std::string column_in_a_sentence(std::string_view name);

// A sentence of ours with all such names in it said so. What is quoted in “ ” stays as it is.
[[nodiscard]] std::string said_plainly(std::string_view sentence);

}  // namespace keenfall::exchange
