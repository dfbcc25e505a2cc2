// How names are compared when a person types them, and which known names come nearest.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::materials {

// Small letters, without spaces, hyphens, underscores, points or commas (letters beyond ASCII are
// kept): "EN 1.2379" -> "en12379".
[[nodiscard]] std::string folded(std::string_view text);

// ASCII letters made small, everything else kept.
[[nodiscard]] std::string lower_case(std::string_view text);

// Without blanks at either end, no-break spaces included.
[[nodiscard]] std::string_view trimmed(std::string_view text);

// Fewest single-letter insertions, deletions and replacements that turn one word into the other
// (Levenshtein 1966).
[[nodiscard]] std::size_t edit_distance(std::string_view one, std::string_view other);

// The up to three known names nearest to `text` after folding, nearest first; none that needs more
// than two edits or as many edits as the text has letters.
[[nodiscard]] std::vector<std::string> nearest_names(std::string_view text,
                                                     std::span<const std::string_view> known);

// The same as words of a problem, "did you mean A or B"; empty where none is near.
[[nodiscard]] std::string did_you_mean(std::string_view text,
                                       std::span<const std::string_view> known);

}  // namespace keenfall::materials
