#include "trials/counted.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace keenfall::trials {

namespace {

struct CountingWord {
  std::string_view one;
  std::string_view many;
  std::array<std::string_view, 3> also;  // other spellings
  bool is_measured = false;
};

// Common practice, no source. Seconds have no "s": it would be found in "cut(s)".
constexpr std::array<CountingWord, 14> kCountingWords = {{
    {"cut", "cuts", {}},
    {"stroke", "strokes", {}},
    {"slice", "slices", {}},
    {"chop", "chops", {}},
    {"pass", "passes", {}},
    {"pull", "pulls", {}},
    {"cycle", "cycles", {}},
    {"sheet", "sheets", {}},
    {"piece", "pieces", {}},
    {"part", "parts", {}},
    {"metre", "metres", {"m", "meter", "meters"}, true},
    {"second", "seconds", {"sec"}, true},
    {"minute", "minutes", {"min"}, true},
    {"hour", "hours", {"h"}, true},
}};

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

std::optional<Counted> counted_named(std::string_view word) {
  if (word.empty()) return std::nullopt;
  for (const CountingWord& known : kCountingWords) {
    const bool is_meant = word == known.one || word == known.many ||
                          std::ranges::find(known.also, word) != known.also.end();
    if (!is_meant) continue;
    return Counted{.one = std::string(known.one),
                   .many = std::string(known.many),
                   .is_measured = known.is_measured};
  }
  return std::nullopt;
}

}  // namespace

std::string so_many(std::string_view number, const Counted& counted) {
  return std::string(number) + " " + (number == "1" ? counted.one : counted.many);
}

std::optional<Counted> counted_in_words(std::string_view words) {
  std::optional<Counted> found;
  std::string word;
  const auto end_word = [&] {
    if (auto counted = counted_named(word)) found = std::move(counted);
    word.clear();
  };
  for (const char c : words) {
    if (is_letter(c)) {
      word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    } else {
      end_word();
    }
  }
  end_word();
  return found;
}

}  // namespace keenfall::trials
