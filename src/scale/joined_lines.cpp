#include "scale/joined_lines.h"

#include "scale/line.h"

#include <utility>

namespace keenfall::scale {

namespace {

// At 300 bits a second a character takes 33 ms, and an adapter hands on what it has within some 20.
constexpr double kBetweenLinesS = 0.2;
constexpr double kLongWithinLineS = 1;

bool ends_a_line(char byte) {
  const char without_parity = static_cast<char>(static_cast<unsigned char>(byte) & 0x7F);
  return without_parity == '\r' || without_parity == '\n';
}

}  // namespace

void JoinedLines::after_pause(double seconds) {
  if (!is_within_ && seconds >= kBetweenLinesS) is_in_a_tail_ = false;
  if (is_within_ && seconds >= kLongWithinLineS) {
    begin_line();
    is_in_a_tail_ = true;
  }
}

void JoinedLines::begin_line() {
  begun_.clear();
  has_text_ = false;
  is_too_long_ = false;
  is_in_a_tail_ = false;
  is_within_ = false;
}

std::vector<JoinedLine> JoinedLines::take(std::string_view piece) {
  std::vector<JoinedLine> lines;
  for (const char byte : piece) {
    if (ends_a_line(byte)) {
      finish_line(byte, lines);
      continue;
    }
    is_within_ = true;
    if (is_in_a_tail_) continue;
    has_text_ = true;
    if (begun_.size() + 1 < kLongestLine) {
      begun_ += byte;
    } else {
      is_too_long_ = true;
    }
  }
  return lines;
}

void JoinedLines::finish_line(char line_end, std::vector<JoinedLine>& lines) {
  if (has_text_) {
    lines.push_back({.bytes = begun_ + line_end, .is_too_long = is_too_long_});
    begin_line();
    return;
  }
  begin_line();
  begun_ = line_end;  // its parity tells of the next line's
}

}  // namespace keenfall::scale
