#include "wire/sent_json.h"

#include <algorithm>

namespace keenfall::wire {

namespace {

// Up to the first byte that is no JSON it counts what a parser would make; a parser ends there.
struct Extent {
  std::size_t deepest = 0;
  std::size_t values = 1;
};

Extent extent_of(std::string_view json) {
  Extent extent;
  std::size_t depth = 0;
  bool in_text = false;
  for (std::size_t i = 0; i < json.size(); ++i) {
    const char letter = json[i];
    if (in_text) {
      if (letter == '\\') ++i;
      in_text = letter != '"';
    } else if (letter == '"') {
      in_text = true;
    } else if (letter == '[' || letter == '{') {
      extent.deepest = std::max(extent.deepest, ++depth);
      ++extent.values;
    } else if (letter == ',') {
      ++extent.values;
    } else if (letter == ']' || letter == '}') {
      depth -= depth > 0 ? 1 : 0;
    }
  }
  return extent;
}

bool is_continued(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

// How many bytes from there on are one such character; 0 where there is none.
std::size_t unseen_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
  };
  if (byte(0) < 0x20U || byte(0) == 0x7FU) return 1;
  if (byte(0) == 0xC2U && byte(1) >= 0x80U && byte(1) < 0xA0U) return 2;  // U+0080 to U+009F
  if (byte(0) != 0xE2U) return 0;
  const bool breaks_or_turns = byte(1) == 0x80U && byte(2) >= 0xA8U && byte(2) <= 0xAEU;
  const bool isolates = byte(1) == 0x81U && byte(2) >= 0xA6U && byte(2) <= 0xA9U;
  return breaks_or_turns || isolates ? 3 : 0;  // U+2028 to U+202E, U+2066 to U+2069
}

bool is_of_many_lines(char letter) { return letter == '\n' || letter == '\r' || letter == '\t'; }

bool has_unseen(std::string_view text, Lines lines) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (lines == Lines::many && is_of_many_lines(text[i])) continue;
    if (unseen_at(text, i) > 0) return true;
  }
  return false;
}

std::string with_separators(std::size_t number) {
  constexpr std::size_t kThousand = 1000;
  if (number < kThousand) return std::to_string(number);
  const std::string rest = std::to_string(number % kThousand + kThousand).substr(1);
  return with_separators(number / kThousand) + "," + rest;
}

}  // namespace

std::optional<base::Problem> too_much_sent(std::string_view json) {
  const Extent extent = extent_of(json);
  if (extent.deepest > kDeepestNesting) {
    return base::Problem{.kind = base::ProblemKind::bad_value,
                         .sentence = "What was sent is nested too deeply.",
                         .accepted = "JSON with at most " + std::to_string(kDeepestNesting) +
                                     " lists and objects within each other"};
  }
  if (extent.values > kMostSentValues) {
    return base::Problem{.kind = base::ProblemKind::too_large,
                         .sentence = "What was sent holds too many values at once.",
                         .accepted = "at most " + with_separators(kMostSentValues) +
                                     " values or cells; a larger table can be taken from its file"};
  }
  return std::nullopt;
}

std::string shown_of(std::string_view text, std::size_t most_bytes) {
  std::size_t length = std::min(text.size(), most_bytes);
  while (length > 0 && length < text.size() && is_continued(text[length])) --length;
  std::string shown;
  for (std::size_t i = 0; i < length;) {
    const std::size_t unseen = unseen_at(text, i);
    shown += unseen > 0 ? "\uFFFD" : std::string(1, text[i]);
    i += std::max<std::size_t>(unseen, 1);
  }
  if (length < text.size()) shown += "...";
  return shown;
}

std::optional<std::string> taken_instead(std::string_view utf8,
                                         Lines lines,
                                         std::size_t most_bytes) {
  if (utf8.size() > most_bytes) {
    return "a text of at most " + with_separators(most_bytes) + " bytes";
  }
  if (lines == Lines::any_bytes || !has_unseen(utf8, lines)) return std::nullopt;
  return lines == Lines::one ? "a text on one line, without control characters"
                             : "a text without control characters";
}

}  // namespace keenfall::wire
