#include "scale/peak_hold.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>

namespace keenfall::scale {

namespace {

// All of these: practice of this project, no source.
constexpr std::size_t kTimesKept = 21;  // 20 steps from one value to the next
constexpr double kLongestGapS = 2;      // more is no rhythm: something was not heard
constexpr double kLongestPressS = 60;
constexpr double kRestWindowS = 2;
// The first of a slow press are not rest yet; what rises by less than `begins_above` in the second
// and a quarter between is drift.
constexpr double kNotYetRestS = 0.5;
constexpr std::size_t kFallenForGood = 2;  // one alone is a platform that swings
constexpr double kCoarseShare = 0.05;      // as much as a good series of readings scatters

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  return *middle;
}

// When the value passed `level` on its way from one value to the next.
double time_of_passing(const TimedValue& below, const TimedValue& above, double level) {
  const double share = (level - below.value) / (above.value - below.value);
  return below.at_s + std::clamp(share, 0.0, 1.0) * (above.at_s - below.at_s);
}

}  // namespace

PeakHold::PeakHold(const PressRules& rules) : rules_(rules) {
  base::require(rules.begins_above > 0, "a press begins above the level of rest");
  base::require(rules.ends_below >= 0 && rules.ends_below < 1, "a press ends below its peak");
}

void PeakHold::take(const TimedValue& value) {
  if (held_ || !std::isfinite(value.value) || !std::isfinite(value.at_s)) return;
  note_time(value.at_s);
  if (pressed_.empty()) {
    rest_at(value);
  } else {
    press_on(value);
  }
}

void PeakHold::start_over() {
  if (held_) return;
  times_.clear();
  resting_.clear();
  pressed_.clear();
  fallen_ = 0;
  peak_ = 0;
}

PressStage PeakHold::stage() const {
  if (held_) return PressStage::held;
  return pressed_.empty() ? PressStage::waiting : PressStage::pressing;
}

std::optional<double> PeakHold::highest() const {
  if (held_) return held_->peak.value;
  if (pressed_.empty()) return std::nullopt;
  return pressed_[peak_].value;
}

void PeakHold::note_time(double at_s) {
  const bool is_in_rhythm =
      times_.empty() || (at_s >= times_.back() && at_s - times_.back() <= kLongestGapS);
  if (!is_in_rhythm) start_over();
  times_.push_back(at_s);
  if (times_.size() > kTimesKept) times_.pop_front();
}

double PeakHold::rest_level() const {
  std::vector<double> values;
  for (const TimedValue& value : resting_) {
    const bool is_rest = times_.back() - value.at_s >= kNotYetRestS;
    if (is_rest || values.empty()) values.push_back(value.value);
  }
  return median(std::move(values));
}

void PeakHold::rest_at(const TimedValue& value) {
  if (!resting_.empty()) {
    const double rest = rest_level();
    if (value.value - rest > rules_.begins_above) {
      rest_ = rest;
      pressed_ = {resting_.back(), value};
      peak_ = 1;
      resting_.clear();
      fallen_ = 0;
      return;
    }
    fallen_ = value.value - rest < -rules_.begins_above ? fallen_ + 1 : 0;
  }
  resting_.push_back(value);
  if (fallen_ >= kFallenForGood) {  // a load was taken off
    resting_.erase(resting_.begin(), resting_.end() - static_cast<std::ptrdiff_t>(fallen_));
    fallen_ = 0;
  }
  while (value.at_s - resting_.front().at_s > kRestWindowS) resting_.pop_front();
}

void PeakHold::press_on(const TimedValue& value) {
  if (value.at_s - pressed_.front().at_s > kLongestPressS) {
    start_over();
    note_time(value.at_s);
    return rest_at(value);
  }
  pressed_.push_back(value);
  if (value.value > pressed_[peak_].value) peak_ = pressed_.size() - 1;
  const double height = pressed_[peak_].value - rest_;
  if (value.value - rest_ <= rules_.ends_below * height) finish();
}

void PeakHold::finish() {
  const TimedValue& peak = pressed_[peak_];
  const double height = peak.value - rest_;
  const double half = rest_ + height / 2;
  HeldPeak held{.peak = peak, .rest = rest_};
  held.samples = static_cast<std::size_t>(
      std::count_if(pressed_.begin() + 1, pressed_.end(), [half](const TimedValue& v) {
        return v.value > half;
      }));
  if (times_.size() > 1) {
    held.refresh_s = (times_.back() - times_.front()) / static_cast<double>(times_.size() - 1);
  }
  std::size_t above = peak_;
  while (above > 1 && pressed_[above - 1].value > half) --above;
  const double rose_for_s = peak.at_s - time_of_passing(pressed_[above - 1], pressed_[above], half);
  if (rose_for_s > 0) held.rise_per_s = (peak.value - half) / rose_for_s;
  held.reads_low_by = held.rise_per_s.value_or(0) * held.refresh_s / 2;
  held.is_coarse =
      !held.rise_per_s || held.refresh_s <= 0 || held.reads_low_by > kCoarseShare * height;
  held_ = held;
}

}  // namespace keenfall::scale
