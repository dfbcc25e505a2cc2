// Lines put together from the pieces in which they arrive.
//
// A line ends with CR, LF or both, also where they carry a parity bit. What is read first after the
// device is opened may be the tail of a line ("4.2 g" of "104.2 g"), so all up to the first line
// end is dropped, unless a pause lay before it. So is what comes after a long pause within a line,
// which may be its rest or another one. Of a line that is too long only that it was is told.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::scale {

struct JoinedLine {
  std::string bytes;  // with its line end, and that of the line before where it came behind that
  bool is_too_long = false;  // longer than kLongestLine: `bytes` is its beginning

  bool operator==(const JoinedLine&) const = default;
};

class JoinedLines {
 public:
  // What is taken next came this long after what was taken before, or after the opening.
  void after_pause(double seconds);

  // Those that this piece completes.
  [[nodiscard]] std::vector<JoinedLine> take(std::string_view piece);

 private:
  void begin_line();
  void finish_line(char line_end, std::vector<JoinedLine>& lines);

  std::string begun_;
  bool has_text_ = false;  // more than line ends
  bool is_too_long_ = false;
  bool is_in_a_tail_ = true;
  bool is_within_ = false;  // something came since the line end before, or since the opening
};

}  // namespace keenfall::scale
