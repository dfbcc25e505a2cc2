// The units that a person wants to be told in, whatever a notebook holds.
//
// Forces are told in any unit of force, lengths in mm or in, and long ones in m or ft with them.
// What is measured in µm stays in µm, as angles, counts and everything else stay what they are. A
// number that is told in another unit has the fewest figures, three at least, that give the
// recorded one back, so that telling loses nothing: 104 gf are 1.02 N, 0.38 mm are 0.015 in.
#pragma once

#include "base/result.h"

#include <span>
#include <string>
#include <string_view>

namespace keenfall::materials {

struct ToldIn {
  std::string force;   // "N", by the name that units.h has; empty: as recorded
  std::string length;  // "mm" or "in"; empty: as recorded

  bool operator==(const ToldIn&) const = default;
};

// "N, in": at most one unit of force and one of length; a mass stands for the force it weighs.
// Nothing, or "as recorded", means as recorded.
[[nodiscard]] base::Result<ToldIn> told_in(std::string_view units);

// "N,in", which told_in reads back; empty where all is told as recorded.
[[nodiscard]] std::string text_of(const ToldIn& told);

// The unit that something recorded in `unit` is told in.
[[nodiscard]] std::string told_unit(const std::string& unit, const ToldIn& told);

// The number as it is told; the units convert into one another.
[[nodiscard]] double told_number(double number, const std::string& from, const std::string& to);

// "100 mm", "3.94 in".
[[nodiscard]] std::string length_words(double length_mm, const ToldIn& told);

// What a long length is told in: "m" or "ft".
[[nodiscard]] std::string long_length_unit(const ToldIn& told);

// A unit that a person is let choose, of those that told_in takes.
struct ToldChoice {
  std::string_view unit;   // "in"
  std::string_view words;  // "inches (in)"
};

[[nodiscard]] std::span<const ToldChoice> forces_to_choose();
[[nodiscard]] std::span<const ToldChoice> lengths_to_choose();

}  // namespace keenfall::materials
