// The value that a scale settles on.
//
// In: values as they are shown, with the seconds at which they came, in one unit. Held is the first
// that the scale itself calls stable; where it says nothing, the last of enough values in a row
// that lie close together for long enough. A value that it calls unstable, one at or below `above`
// (an empty scale, with its drift) and a gap begin the row anew. Out: that value as shown.
#pragma once

#include "scale/line.h"
#include "scale/peak_hold.h"

#include <cstddef>
#include <deque>
#include <optional>

namespace keenfall::scale {

// Where the scale says nothing itself: common practice, no source.
struct StableRules {
  double above = 0;        // what an empty scale may show
  double tolerance = 0;    // from the lowest to the highest value of the row
  std::size_t values = 5;  // in the row, at least
  double for_s = 1;        // from its first to its last
};

struct HeldStable {
  TimedValue value;
  std::size_t samples = 0;      // in the row up to it, itself included
  bool is_said_stable = false;  // by the scale

  bool operator==(const HeldStable&) const = default;
};

class StableHold {
 public:
  explicit StableHold(const StableRules& rules);

  // Nothing once a value is held. A value that is no number says nothing.
  void take(const TimedValue& value, Stability stability);
  void start_over();

  [[nodiscard]] const std::optional<HeldStable>& held() const { return held_; }

 private:
  StableRules rules_;
  std::deque<TimedValue> row_;
  std::optional<HeldStable> held_;
};

}  // namespace keenfall::scale
