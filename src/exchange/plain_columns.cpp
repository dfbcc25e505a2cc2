#include "exchange/plain_columns.h"

#include "exchange/table_columns.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace keenfall::exchange {

namespace {

struct Unit {
  std::string_view suffix;
  std::string_view in_label;
  std::string_view in_sentence;
};

constexpr std::array<Unit, 4> kUnits = {{{"_per_side_deg", " per side (deg)", ", degrees per side"},
                                         {"_hrc", " (HRC)", ", HRC"},
                                         {"_mm", " (mm)", ", mm"},
                                         {"_deg", " (deg)", ", degrees"}}};

std::string plain(std::string_view name, std::string_view Unit::*unit_words) {
  std::string words(name);
  const auto* const unit =
      std::ranges::find_if(kUnits, [name](const Unit& one) { return name.ends_with(one.suffix); });
  if (unit != kUnits.end()) words.resize(words.size() - unit->suffix.size());
  std::ranges::replace(words, '_', ' ');
  if (unit != kUnits.end()) words += unit->*unit_words;
  return words;
}

bool is_of_a_name(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; }

bool is_of_a_word(char c) {
  return is_of_a_name(c) || (c >= 'A' && c <= 'Z') || (static_cast<unsigned char>(c) & 0x80U) != 0;
}

std::string name_said_plainly(std::string_view name) {
  if (name.find('_') == name.npos) return std::string(name);
  const bool is_column = std::ranges::any_of(
      column_definitions(), [name](const ColumnDefinition& one) { return one.name == name; });
  if (is_column) return column_in_a_sentence(name);
  std::string words(name);
  if (trials::find_reading_kind(words) != nullptr) std::ranges::replace(words, '_', ' ');
  return words;
}

}  // namespace

std::string column_label(std::string_view name) { return plain(name, &Unit::in_label); }

std::string column_in_a_sentence(std::string_view name) { return plain(name, &Unit::in_sentence); }

std::string said_plainly(std::string_view sentence) {
  constexpr std::string_view kOpening = "“";
  constexpr std::string_view kClosing = "”";
  std::string said;
  while (!sentence.empty()) {
    std::size_t length = 1;
    if (sentence.starts_with(kOpening)) {
      const std::size_t end = sentence.find(kClosing);
      length = end == sentence.npos ? sentence.size() : end + kClosing.size();
      said += sentence.substr(0, length);
    } else if (is_of_a_word(sentence.front())) {
      length = static_cast<std::size_t>(std::ranges::find_if_not(sentence, is_of_a_word) -
                                        sentence.begin());
      // An opening quote is no word, though its bytes are those of letters.
      length = std::min(length, std::max<std::size_t>(sentence.find(kOpening), 1));
      said += name_said_plainly(sentence.substr(0, length));
    } else {
      said += sentence.front();
    }
    sentence.remove_prefix(length);
  }
  return said;
}

}  // namespace keenfall::exchange
