#include "exchange/reading_cell.h"

#include "exchange/cell_words.h"
#include "exchange/mistyped_number.h"
#include "exchange/number_cell.h"
#include "exchange/text_lines.h"
#include "materials/units.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr std::array<std::string_view, 5> kBetweenRepeats = {"\n", "/", ";", "|", ", "};
constexpr std::array<std::string_view, 11> kNothingRead = {
    "", "–", "—", "…", ".", "..", "na", "n/a", "n.a.", "notread", "missing"};
constexpr std::array<std::string_view, 8> kAbout = {
    "~", "≈", "ca.", "ca ", "c. ", "about ", "approx.", "approx "};
constexpr std::array<std::string_view, 4> kBounds = {"<", ">", "≤", "≥"};
constexpr std::array<std::string_view, 10> kStruck = {"struck",
                                                      "strike",
                                                      "void",
                                                      "ignore",
                                                      "discard",
                                                      "reject",
                                                      "invalid",
                                                      "notcounted",
                                                      "doesnotcount",
                                                      "crossedout"};

constexpr std::array<std::string_view, 4> kDoubtful = {
    "doubtful", "indoubt", "unsure", "questionable"};

bool is_decimal_digit(char c) { return c >= '0' && c <= '9'; }

bool holds_digit(std::string_view text) { return std::ranges::any_of(text, is_decimal_digit); }

bool is_nothing(std::string_view text) {
  return std::ranges::find(kNothingRead, folded(text)) != kNothingRead.end();
}

// Folded words, as with "Struck: slipped", at the beginning.
template <std::size_t kCount>
const std::string_view* beginning_of(const std::string& folded_text,
                                     const std::array<std::string_view, kCount>& words) {
  const auto found = std::ranges::find_if(
      words, [&folded_text](std::string_view word) { return folded_text.starts_with(word); });
  return found == words.end() ? nullptr : &*found;
}

std::optional<std::string_view> without_about(std::string_view text) {
  for (const std::string_view word : kAbout) {
    const std::string_view head = text.substr(0, word.size());
    const bool is_same = head.size() == word.size() && folded(head) == folded(word) &&
                         (word.back() != ' ' || head.back() == ' ');
    if (is_same) return trimmed(text.substr(word.size()));
  }
  return std::nullopt;
}

bool begins_with_number(std::string_view text) {
  if (const auto rest = without_about(text)) text = *rest;
  if (text.starts_with('-') || text.starts_with('+')) text.remove_prefix(1);
  return !text.empty() && is_decimal_digit(text.front());
}

std::vector<std::string_view> pieces_between(std::string_view text, std::string_view separator) {
  std::vector<std::string_view> pieces;
  while (true) {
    const std::size_t at = text.find(separator);
    pieces.push_back(trimmed(text.substr(0, at)));
    if (at == text.npos) return pieces;
    text.remove_prefix(at + separator.size());
  }
}

// More than one only where each piece is a number, or stands for none.
std::vector<std::string_view> repeats_in(std::string_view text) {
  for (const std::string_view separator : kBetweenRepeats) {
    auto pieces = pieces_between(text, separator);
    if (pieces.size() < 2) continue;
    const bool are_readings = std::ranges::all_of(pieces, [](std::string_view piece) {
      return begins_with_number(piece) || is_nothing(piece);
    });
    if (are_readings && begins_with_number(pieces.front())) return pieces;
  }
  return {text};
}

base::Problem fault(std::string_view text, std::string sentence) {
  return {.sentence = std::move(sentence),
          .place = {.found = excerpt(text)},
          .accepted =
              "a number; a number with a word, such as 131 slipped; several as 131 / 128 / "
              "135; words alone in brackets, such as (above the scale)"};
}

std::string without_brackets(std::string_view text) {
  if (text.size() < 2) return std::string(text);
  const bool is_bracketed = (text.starts_with('(') && text.ends_with(')')) ||
                            (text.starts_with('[') && text.ends_with(']'));
  return std::string(is_bracketed ? trimmed(text.substr(1, text.size() - 2)) : text);
}

bool is_in_brackets(std::string_view text) {
  return text.size() > 2 && without_brackets(text).size() < text.size();
}

std::string_view without_punctuation(std::string_view text) {
  while (!text.empty() && std::string_view(",;:.-").find(text.front()) != std::string_view::npos) {
    text = trimmed(text.substr(1));
  }
  return text;
}

bool is_unit(std::string_view word, std::span<const trials::ReadingKind> defined_kinds) {
  if (materials::find_unit(word) != nullptr) return true;
  const auto has_unit = [word](const trials::ReadingKind& kind) { return kind.unit == word; };
  return std::ranges::any_of(defined_kinds, has_unit) ||
         std::ranges::any_of(trials::known_reading_kinds(), has_unit);
}

// The reason after the word that strikes: "struck: slipped" is slipped.
std::string reason_behind(std::string_view note) {
  const std::size_t end = note.find_first_of(" :,;");
  if (end == note.npos) return "yes";
  const std::string reason = without_brackets(without_punctuation(trimmed(note.substr(end))));
  return reason.empty() ? "yes" : reason;
}

// "?" beside the number, also in brackets: taken off, and what stands behind it left.
std::string_view without_doubt(WrittenReading& reading, std::string_view behind) {
  if (without_question_marks(without_brackets(behind)).empty() && !behind.empty()) {
    reading.doubtful = kQuestionMarkReason;
    return {};
  }
  while (behind.starts_with('?')) {
    reading.doubtful = kQuestionMarkReason;
    behind = trimmed(behind.substr(1));
  }
  return behind;
}

void take_note(WrittenReading& reading, std::string_view behind) {
  const std::string note = without_brackets(without_punctuation(without_doubt(reading, behind)));
  if (note.empty()) return;
  const std::string word = folded(note);
  if (beginning_of(word, kStruck) != nullptr) {
    reading.struck = reason_behind(note);
  } else if (word.find("struck") != word.npos) {
    reading.struck = note;
  } else if (beginning_of(word, kDoubtful) != nullptr) {
    reading.doubtful = reason_behind(note);
  } else {
    const bool has_letters =
        std::ranges::any_of(note, [](char c) { return (c & 0x80) != 0 || std::isalnum(c) != 0; });
    const std::string said = has_letters ? note : "marked " + note;
    reading.note += (reading.note.empty() ? "" : ", ") + said;
  }
}

std::string fault_sentence(NumberFault number_fault, std::string_view text, DecimalMark mark) {
  if (number_fault == NumberFault::thousands && text.find(' ') != text.npos) {
    return in_quotes(text) +
           " may be several readings or one number with a thousands separator. Write repeats with "
           "a slash between them.";
  }
  std::string sentence =
      fault_in_words(number_fault, text, mark) + "." + way_out(number_fault, mark);
  sentence.insert(0, "The reading is not clear: ");
  if (text.find(',') != text.npos) {
    sentence += " If these are repeats, write a slash between them.";
  }
  return sentence;
}

base::Result<WrittenReading> one_reading(std::string_view text,
                                         DecimalMark mark,
                                         std::span<const trials::ReadingKind> defined_kinds) {
  WrittenReading reading;
  std::string_view rest = text;
  if (const auto without = without_about(text)) {
    rest = *without;
    reading.note = "about";
  }
  const NumberCell number = number_cell(rest, mark);
  if (number.fault != NumberFault::none) {
    return base::failed(fault(text, fault_sentence(number.fault, rest, mark)));
  }
  std::string_view behind = number.unit;
  reading.number = std::string(trimmed(rest.substr(0, rest.size() - behind.size())));
  const bool is_glued = reading.number.size() + behind.size() == rest.size();
  const std::size_t word_end = std::min(behind.find_first_of(" ([,;:?"), behind.size());
  if (word_end > 0 && is_unit(behind.substr(0, word_end), defined_kinds)) {
    reading.number += " " + std::string(behind.substr(0, word_end));
    behind = trimmed(behind.substr(word_end));
  }
  if (is_glued && looks_like_digits(behind.substr(0, behind.find_first_of(" ([;:?")))) {
    return base::failed(fault(text, letters_among_digits(text)));
  }
  if (holds_digit(behind) && !is_in_brackets(behind)) {
    return base::failed(
        fault(text,
              in_quotes(text) +
                  " holds a second number, so which one is the reading cannot be told. Put "
                  "what is a note in brackets, or write repeats with a slash between them."));
  }
  take_note(reading, behind);
  return reading;
}

bool is_bound(std::string_view text) {
  return std::ranges::any_of(kBounds,
                             [text](std::string_view bound) { return text.starts_with(bound); });
}

base::Result<ReadingCell> words_alone(std::string_view text) {
  const std::string word = folded(text);
  if (without_question_marks(without_brackets(text)).empty()) {
    return base::failed(fault(text, std::string(kQuestionMarkAlone)));
  }
  if (is_in_brackets(text)) return ReadingCell{.event = without_brackets(text)};
  if (is_bound(text)) {
    return base::failed(
        fault(text,
              in_quotes(text) + " is a bound and not a reading; bounds are not judged. Write what "
                                "was read, or put it in brackets to keep it as a note."));
  }
  if (is_number_in_words(text)) {
    return base::failed(
        fault(text, in_quotes(text) + " is a number in words. Write the reading in figures."));
  }
  if (looks_like_digits(text)) {
    return base::failed(fault(text, letters_among_digits(text)));
  }
  const bool is_choice = word == "true" || word == "false" || word == "yes" || word == "no";
  if (is_choice || character_count(text) < 2 || holds_digit(text)) {
    return base::failed(
        fault(text, in_quotes(text) + " is neither a reading nor a word that says what happened."));
  }
  if (!says_why_no_reading(text)) {
    return base::failed(
        fault(text,
              in_quotes(text) + " cannot be read: it is no number, and no word that is known here "
                                "for what happened. Put it in brackets to keep it as such."));
  }
  return ReadingCell{.event = std::string(text)};
}

}  // namespace

std::vector<std::string_view> parts_of_cell(std::string_view text) { return repeats_in(text); }

base::Result<ReadingCell> reading_cell(std::string_view text,
                                       DecimalMark mark,
                                       std::span<const trials::ReadingKind> defined_kinds) {
  text = trimmed(text);
  if (is_nothing(text)) return ReadingCell{};
  if (!begins_with_number(text)) return words_alone(text);
  const std::vector<std::string_view> pieces = repeats_in(text);
  ReadingCell cell;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (is_nothing(pieces[i])) continue;
    auto reading = one_reading(pieces[i], mark, defined_kinds);
    if (!reading) return base::failed(reading.error());
    if (pieces.size() > 1) reading->repeat = static_cast<int>(i + 1);
    cell.readings.push_back(std::move(*reading));
  }
  return cell;
}

}  // namespace keenfall::exchange
