#include "materials/spelling.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace keenfall::materials {

namespace {

char lower(char letter) {
  return static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
}

constexpr std::array<std::string_view, 6> kBlanks = {" ", "\t", "\r", "\n", "\u00a0", "\u202f"};

}  // namespace

std::string folded(std::string_view text) {
  std::string letters;
  for (const char c : trimmed(text)) {
    if (std::string_view(" \t-_.,").find(c) == std::string_view::npos) letters += lower(c);
  }
  return letters;
}

std::string lower_case(std::string_view text) {
  std::string letters(text);
  std::ranges::transform(letters, letters.begin(), lower);
  return letters;
}

std::string_view trimmed(std::string_view text) {
  for (bool shorter = true; shorter;) {
    shorter = false;
    for (const std::string_view blank : kBlanks) {
      if (text.starts_with(blank)) {
        text.remove_prefix(blank.size());
        shorter = true;
      }
      if (text.ends_with(blank)) {
        text.remove_suffix(blank.size());
        shorter = true;
      }
    }
  }
  return text;
}

std::size_t edit_distance(std::string_view one, std::string_view other) {
  std::vector<std::size_t> row(other.size() + 1);
  for (std::size_t j = 0; j <= other.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= one.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= other.size(); ++j) {
      const std::size_t replaced = diagonal + (one[i - 1] == other[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, replaced});
    }
  }
  return row[other.size()];
}

std::vector<std::string> nearest_names(std::string_view text,
                                       std::span<const std::string_view> known) {
  constexpr std::size_t kLongestName = 64;
  struct Near {
    std::size_t edits;
    std::string_view name;
  };
  const std::string wanted = folded(text);
  if (wanted.empty() || wanted.size() > kLongestName) return {};
  std::vector<Near> near;
  for (const std::string_view name : known) {
    const std::size_t edits = edit_distance(wanted, folded(name));
    if (edits <= 2 && edits < wanted.size()) near.push_back({edits, name});
  }
  std::ranges::stable_sort(near, {}, &Near::edits);
  std::vector<std::string> names;
  for (const Near& each : near) {
    if (names.size() < 3 && std::ranges::find(names, each.name) == names.end()) {
      names.emplace_back(each.name);
    }
  }
  return names;
}

std::string did_you_mean(std::string_view text, std::span<const std::string_view> known) {
  std::string words;
  for (const std::string& name : nearest_names(text, known)) {
    words += (words.empty() ? "did you mean " : " or ") + name;
  }
  return words;
}

}  // namespace keenfall::materials
