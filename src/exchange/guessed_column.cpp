// The words of header_guess.h.
#include "exchange/header_guess.h"

#include "exchange/header_meaning.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace keenfall::exchange {

namespace {

struct GuessedName {
  std::string_view words;  // lower case, without those that say nothing
  Column column;
};

// Words that other people use for ours (common practice, no source).
constexpr std::array<GuessedName, 78> kGuessedNames = {{
    {"sample", Column::blade},
    {"item", Column::blade},
    {"model", Column::blade},
    {"product", Column::blade},
    {"tool", Column::blade},
    {"material", Column::medium},
    {"stock", Column::medium},
    {"substrate", Column::medium},
    {"what was cut", Column::medium},
    {"material cut", Column::medium},
    {"cut material", Column::medium},
    {"test material", Column::medium},
    {"test medium", Column::medium},
    {"media", Column::medium},
    {"trial", Column::run},
    {"session", Column::run},
    {"series", Column::run},
    {"test run", Column::run},
    {"sharpening", Column::run},
    {"round", Column::run},
    {"attempt", Column::run},
    {"count", Column::cuts},
    {"cut count", Column::cuts},
    {"cuts count", Column::cuts},
    {"strokes", Column::cuts},
    {"slices", Column::cuts},
    {"chops", Column::cuts},
    {"cycles", Column::cuts},
    {"sharpness", Column::reading},
    {"force", Column::reading},
    {"push force", Column::reading},
    {"peak force", Column::reading},
    {"cutting force", Column::reading},
    {"measurement", Column::reading},
    {"measured", Column::reading},
    {"result", Column::reading},
    {"sharpness reading", Column::reading},
    {"alloy", Column::steel},
    {"grade", Column::steel},
    {"blade steel", Column::steel},
    {"hardness", Column::hardness},
    {"rockwell", Column::hardness},
    {"rockwell c", Column::hardness},
    {"grit", Column::finish},
    {"abrasive", Column::finish},
    {"stone", Column::finish},
    {"edge finish", Column::finish},
    {"lot", Column::medium_lot},
    {"batch", Column::medium_lot},
    {"stock lot", Column::medium_lot},
    {"tester", Column::operator_name},
    {"person", Column::operator_name},
    {"user", Column::operator_name},
    {"day", Column::date},
    {"test date", Column::date},
    {"date tested", Column::date},
    {"remark", Column::note},
    {"remarks", Column::note},
    {"observation", Column::note},
    {"observations", Column::note},
    {"excluded", Column::struck},
    {"rejected", Column::struck},
    {"discarded", Column::struck},
    {"sequence", Column::order},
    {"run order", Column::order},
    {"replicate", Column::repeat},
    {"rep", Column::repeat},
    {"position", Column::station},
    {"spot", Column::station},
    {"units", Column::unit},
    {"piece", Column::specimen},
    {"cut type", Column::method},
    {"cut method", Column::method},
    {"motion", Column::method},
    {"events", Column::event},
    {"failed after", Column::failed_by},
    {"edge life", Column::lasted},
    {"lasted for", Column::lasted},
}};

constexpr std::array<std::string_view, 16> kSayNothing = {"the",
                                                          "of",
                                                          "no",
                                                          "nr",
                                                          "num",
                                                          "number",
                                                          "name",
                                                          "id",
                                                          "code",
                                                          "total",
                                                          "made",
                                                          "value",
                                                          "type",
                                                          "so",
                                                          "far",
                                                          "cumulative"};

bool is_word_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
         (static_cast<unsigned char>(c) & 0x80U) != 0;
}

// "No. of cuts (so far)" is no, of, cuts; what stands in brackets at the end, or behind a comma, is
// a unit.
std::vector<std::string> words_in_header(std::string_view header) {
  header = trimmed(header);
  if (header.ends_with(')')) header = header.substr(0, header.rfind('('));
  if (header.ends_with(']')) header = header.substr(0, header.rfind('['));
  header = header.substr(0, header.rfind(','));
  std::vector<std::string> words(1);
  for (const char c : header) {
    const char letter = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    if (is_word_letter(letter)) {
      words.back() += letter;
    } else if (!words.back().empty()) {
      words.emplace_back();
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

std::string joined_words(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

std::optional<Column> column_of_words(const std::string& words) {
  const auto* const found = std::ranges::find(kGuessedNames, words, &GuessedName::words);
  if (found != kGuessedNames.end()) return found->column;
  const auto meaning = meaning_of_header(words, {});
  if (!meaning || meaning->unit.factor != 1) return std::nullopt;
  return meaning->column;
}

}  // namespace

std::optional<Column> guessed_column(std::string_view header) {
  if (meaning_of_header(header, {}) || is_doubtful_angle(header)) return std::nullopt;
  const std::vector<std::string> words = words_in_header(header);
  if (words.empty() || std::ranges::find(words, "angle") != words.end()) return std::nullopt;
  if (const auto column = column_of_words(joined_words(words))) return column;
  std::vector<std::string> telling;
  for (const std::string& word : words) {
    if (std::ranges::find(kSayNothing, word) == kSayNothing.end()) telling.push_back(word);
  }
  if (telling.empty() || telling.size() == words.size()) return std::nullopt;
  return column_of_words(joined_words(telling));
}

}  // namespace keenfall::exchange
