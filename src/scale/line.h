// One line of what a scale sends, read: number, unit, whether it stands still, overload.
//
// In: the bytes between two line ends, with or without those. Taken are the shapes that common
// bench scales send ("ST,GS,+  104.2 g", "    104.2 g ?", "+ 104.2  G S", "-0,35 kg"): one number,
// a unit of force or mass behind it, tags anywhere, of which those of stability, overload and
// faults count. Refused, with the reason: no unit or an unknown one, two numbers or units, a comma
// that could divide thousands, bytes that were damaged on the way. The reason is never worked
// around: a line that could be two things is no reading. The shapes: common practice, no source.
#pragma once

#include "base/result.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace keenfall::scale {

enum class Stability { not_said, stable, unstable };

struct Reading {
  std::optional<double> number;  // in `unit`; absent where the scale is overloaded, and only there
  std::string unit;              // as the table of units names it; of an overload perhaps empty
  int decimals = 0;              // shown behind the decimal mark: the last one is the scale's step
  Stability stability = Stability::not_said;
  bool is_overload = false;
  std::string
      line;  // as it was sent, without parity bits, control characters and blanks at its end

  bool operator==(const Reading&) const = default;
};

struct LineRules {
  bool comma_is_decimal = false;  // "1,104 kg" is read as a little more than 1 kg, not refused
};

// No longer line is read (joined_lines.h gives none that is longer).
inline constexpr std::size_t kLongestLine = 120;

// Fails with the line, as far as it can be shown, in `place.found`.
[[nodiscard]] base::Result<Reading> reading_of_line(std::string_view bytes,
                                                    const LineRules& rules = {});

// Printable ASCII alone, with no blanks at its end: what of a line can be shown and kept.
[[nodiscard]] std::string shown_line(std::string_view bytes);

}  // namespace keenfall::scale
