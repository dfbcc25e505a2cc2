#include "scale/stable_hold.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>

namespace keenfall::scale {

namespace {

constexpr double kLongestPauseS = 2;  // between values of one row
constexpr std::size_t kLongestRow = 1000;
constexpr double kOfRounding = 1e-9;  // 104.3 - 104.2 is a little more than 0.1

double spread_of(const std::deque<TimedValue>& row) {
  const auto [least, most] = std::ranges::minmax_element(row, {}, &TimedValue::value);
  return most->value - least->value;
}

}  // namespace

StableHold::StableHold(const StableRules& rules) : rules_(rules) {
  base::require(rules.tolerance >= 0, "a tolerance is 0 or more");
  base::require(rules.values >= 2, "that a value stands still takes two of them at least");
}

void StableHold::start_over() { row_.clear(); }

void StableHold::take(const TimedValue& value, Stability stability) {
  if (held_ || !std::isfinite(value.value) || !std::isfinite(value.at_s)) return;
  const bool is_in_rhythm = row_.empty() || (value.at_s >= row_.back().at_s &&
                                             value.at_s - row_.back().at_s <= kLongestPauseS);
  if (!is_in_rhythm) row_.clear();
  if (value.value <= rules_.above || stability == Stability::unstable) return row_.clear();
  row_.push_back(value);
  const double tolerance = rules_.tolerance * (1 + kOfRounding) + kOfRounding * value.value;
  while (row_.size() > kLongestRow || spread_of(row_) > tolerance) row_.pop_front();
  const bool is_said = stability == Stability::stable;
  const bool is_seen =
      row_.size() >= rules_.values && value.at_s - row_.front().at_s >= rules_.for_s;
  if (!is_said && !is_seen) return;
  held_ = HeldStable{.value = value, .samples = row_.size(), .is_said_stable = is_said};
}

}  // namespace keenfall::scale
