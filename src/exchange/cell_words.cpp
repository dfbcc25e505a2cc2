#include "exchange/cell_words.h"

#include "exchange/text_lines.h"
#include "materials/spelling.h"

#include <algorithm>
#include <array>

namespace keenfall::exchange {

namespace {

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::ranges::find(words, word) != words.end();
}

struct EventWord {
  std::string_view beginning;  // of a word in the cell
  trials::EventKind kind;
};

// In the order in which they are looked for: "hit the board" is a board, not an obstacle.
constexpr std::array<EventWord, 14> kEventWords = {{
    {"twist", trials::EventKind::twisted},
    {"board", trials::EventKind::board_touched},
    {"bench", trials::EventKind::board_touched},
    {"hit", trials::EventKind::hit_something},
    {"staple", trials::EventKind::hit_something},
    {"nail", trials::EventKind::hit_something},
    {"stone", trials::EventKind::hit_something},
    {"wet", trials::EventKind::wet},
    {"damp", trials::EventKind::wet},
    {"pause", trials::EventKind::pause},
    {"break", trials::EventKind::pause},
    {"rest", trials::EventKind::pause},
    {"interrupt", trials::EventKind::pause},
    {"overnight", trials::EventKind::pause},
}};

// Of words that say alone why there is no reading.
constexpr std::array<std::string_view, 41> kWhyNoReading = {
    "abandon", "abort", "above", "below",   "bent", "beyond", "blunt",    "broke",  "burr",
    "chip",    "crack", "dnf",   "drop",    "dull", "end",    "error",    "fail",   "fell",
    "finish",  "forg",  "gave",  "invalid", "lost", "miss",   "overload", "quit",   "roll",
    "sharpen", "skip",  "slip",  "snag",    "snap", "stop",   "strop",    "struck", "stuck",
    "tear",    "tore",  "torn",  "untest",  "void"};

// Whether some word of the text begins so.
bool has_word_beginning(std::string_view lower_text, std::string_view beginning) {
  for (std::size_t at = lower_text.find(beginning); at != lower_text.npos;
       at = lower_text.find(beginning, at + 1)) {
    if (at == 0 || lower_text[at - 1] < 'a' || lower_text[at - 1] > 'z') return true;
  }
  return false;
}

}  // namespace

std::optional<std::string> reason_in(std::string_view cell) {
  const std::string word = folded(cell);
  if (word.empty() || is_one_of(word, {"no", "n", "0", "false"})) return std::nullopt;
  if (is_one_of(word, {"yes", "y", "x", "1", "true"})) return "no reason given";
  return std::string(cell);
}

std::string_view without_question_marks(std::string_view cell) {
  while (cell.ends_with('?')) cell = trimmed(cell.substr(0, cell.size() - 1));
  return cell;
}

trials::Motion motion_of(std::string_view cell) {
  const std::string word = folded(cell);
  if (is_one_of(word, {"push", "pushcut", "pushed"})) return trials::Motion::push;
  if (is_one_of(word, {"draw", "drawcut", "drawn", "pull", "pullcut"})) return trials::Motion::draw;
  if (is_one_of(word, {"slice", "slicecut", "slicing", "sliced"})) return trials::Motion::slice;
  return trials::Motion::not_recorded;
}

std::string_view word_for(trials::Motion motion) {
  switch (motion) {
    case trials::Motion::push:
      return "push";
    case trials::Motion::draw:
      return "draw";
    case trials::Motion::slice:
      return "slice";
    case trials::Motion::not_recorded:
      break;
  }
  return "";
}

trials::EventKind event_kind_of(std::string_view cell) {
  const std::string lower_text = materials::lower_case(cell);
  const auto found = std::ranges::find_if(kEventWords, [&lower_text](const EventWord& candidate) {
    return has_word_beginning(lower_text, candidate.beginning);
  });
  return found == kEventWords.end() ? trials::EventKind::other : found->kind;
}

bool says_why_no_reading(std::string_view cell) {
  if (trimmed(cell).find_first_of(" \t\n") != cell.npos) return true;
  if (event_kind_of(cell) != trials::EventKind::other) return true;
  const std::string lower_text = materials::lower_case(cell);
  return std::ranges::any_of(kWhyNoReading, [&lower_text](std::string_view beginning) {
    return has_word_beginning(lower_text, beginning);
  });
}

std::string_view word_for(trials::EventKind kind) {
  switch (kind) {
    case trials::EventKind::twisted:
      return "twisted";
    case trials::EventKind::hit_something:
      return "hit something";
    case trials::EventKind::board_touched:
      return "board touched";
    case trials::EventKind::wet:
      return "wet";
    case trials::EventKind::pause:
      return "pause";
    case trials::EventKind::other:
      break;
  }
  return "other";
}

}  // namespace keenfall::exchange
