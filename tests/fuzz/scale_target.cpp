// A scale at a serial line: whatever bytes arrive, in whatever pieces.
//
// A byte 0x01 ends a piece, one 0x02 is a short pause, one 0x03 a long one; the others are heard.
// Demands that what is read has its unit, that a line keeps its limit, and that what is held was
// shown.
#include "fuzz_target.h"
#include "scale/hold.h"
#include "scale/joined_lines.h"
#include "scale/line.h"

#include <cstdlib>
#include <set>
#include <string>

namespace {

using keenfall::scale::Hold;
using keenfall::scale::HoldKind;
using keenfall::scale::JoinedLines;
using keenfall::scale::Reading;

constexpr double kStepS = 0.1;
constexpr double kShortPauseS = 0.3;
constexpr double kLongPauseS = 3;

void demand(bool is_so) {
  if (!is_so) std::abort();
}

class Bench {
 public:
  void hear(const std::string& piece, double pause_s) {
    now_s_ += pause_s;
    lines_.after_pause(pause_s);
    for (const auto& line : lines_.take(piece)) {
      now_s_ += kStepS;
      demand(line.bytes.size() <= keenfall::scale::kLongestLine);
      if (const auto reading = keenfall::scale::reading_of_line(line.bytes)) read(*reading);
    }
  }

 private:
  void read(const Reading& reading) {
    demand(reading.is_overload != reading.number.has_value());
    if (reading.number) {
      demand(!reading.unit.empty());
      shown_.insert(*reading.number);
    }
    for (Hold* hold : {&press_, &settling_}) {
      hold->take(now_s_, reading);
      if (hold->held()) demand(shown_.contains(hold->held()->number));
    }
  }

  double now_s_ = 0;
  JoinedLines lines_;
  std::set<double> shown_;
  Hold press_ = Hold::armed({}).value();
  Hold settling_ = Hold::armed({.kind = HoldKind::stable}).value();
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  Bench bench;
  std::string piece;
  for (const char byte : keenfall::fuzz::as_text(bytes, size)) {
    if (byte < '\x01' || byte > '\x03') {
      piece += byte;
      continue;
    }
    const double pause_s = byte == '\x01' ? 0 : byte == '\x02' ? kShortPauseS : kLongPauseS;
    bench.hear(piece, pause_s);
    piece.clear();
  }
  bench.hear(piece, 0);
  return 0;
}
