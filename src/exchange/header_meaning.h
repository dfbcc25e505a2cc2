// What a header or a row's label means: which of our columns, in which unit.
//
// "thickness behind edge [µm]" is thickness_behind_edge_mm, its numbers to be multiplied by 0.001;
// "reading (gf)" is reading, in gf; "inclusive angle" is twice the bevel angle per side. Case,
// spaces, hyphens, underscores and brackets do not matter. A unit in brackets (or after a comma)
// must be a known one, or that of a kind the person defined; otherwise the header is not ours.
#pragma once

#include "exchange/table_columns.h"
#include "trials/reading_kind.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace keenfall::exchange {

struct HeaderMeaning {
  Column column = Column::blade;
  HeaderUnit unit;
  bool is_own_name = true;  // false: another usual name of it
};

[[nodiscard]] std::optional<HeaderMeaning> meaning_of_header(
    std::string_view header, std::span<const trials::ReadingKind> defined_kinds);

// Whether a header that is mapped to `column` names a unit; none when it does not, or is unknown.
[[nodiscard]] HeaderUnit unit_in_header(std::string_view header,
                                        Column column,
                                        std::span<const trials::ReadingKind> defined_kinds);

// An angle that does not say whether it is per side or inclusive: "bevel angle (deg)".
[[nodiscard]] bool is_doubtful_angle(std::string_view header);

// The number of cuts in "15", "15 cuts", "15 strokes", "after 31" or "0 (gf)"; nullopt in all other
// headers.
[[nodiscard]] std::optional<double> cuts_in_header(std::string_view header);

// Lower case, without blanks, '-', '_' and brackets.
[[nodiscard]] std::string folded_header(std::string_view header);

}  // namespace keenfall::exchange
