// What a trial counts from one reading to the next: cuts, unless the table says strokes, sheets,
// metres or the like. Fields called cuts hold that count, whatever it is; every sentence takes the
// word from here.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::trials {

struct Counted {
  std::string one = "cut";
  std::string many = "cuts";
  bool is_measured = false;  // a length or a time, which no length of a cut turns into metres

  bool operator==(const Counted&) const = default;
};

// "15 strokes", "1 cut". `number`: as the sentence writes it.
[[nodiscard]] std::string so_many(std::string_view number, const Counted& counted);

// The last word of a header or cell that names something to count: "strokes made", "time_min",
// "15 strokes". Nothing where none does.
[[nodiscard]] std::optional<Counted> counted_in_words(std::string_view words);

}  // namespace keenfall::trials
