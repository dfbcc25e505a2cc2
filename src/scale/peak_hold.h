// The peak of one press: the highest value between the moment it begins and the moment it lets go.
//
// In: values as they are shown, with the seconds at which they came, in one unit. The scale rests
// at some level before the press, zero or drifted off it; a press begins when the value rises
// above that by `begins_above`, and ends when no more than `ends_below` of its height is left. A
// thread that parts lets go at once; a hand that trembles does not lose half. A load that stays for
// a minute is no press. Out: the peak as shown, nothing taken off it.
//
// A scale that shows a value every T seconds while the force rises at R a second shows its last
// value before the thread parts T/2 earlier on average, so R T/2 too low, and R T at most
// (arithmetic; what the scale itself smooths comes on top).
#pragma once

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::scale {

struct TimedValue {
  double at_s = 0;  // by a clock that never goes back
  double value = 0;
  std::string line;  // it was read from; may be empty

  bool operator==(const TimedValue&) const = default;
};

struct PressRules {
  double begins_above = 5;  // over the level of rest; above 0
  double ends_below = 0.5;  // share of the height that is left; 0 to 1
};

struct HeldPeak {
  TimedValue peak;
  double rest = 0;                   // where the scale stood before
  std::size_t samples = 0;           // values above half the height, on the way up and down
  double refresh_s = 0;              // from one value to the next, on average; 0: not known
  std::optional<double> rise_per_s;  // from half the height to the peak; absent: in no time at all
  double reads_low_by = 0;           // R T/2
  bool is_coarse = false;  // low by more than a twentieth of the height, or by nobody knows what

  bool operator==(const HeldPeak&) const = default;
};

enum class PressStage { waiting, pressing, held };

class PeakHold {
 public:
  explicit PeakHold(const PressRules& rules);

  // Nothing once a press is held. A value that is no number says nothing.
  void take(const TimedValue& value);
  // The press that is going on, if there is one, tells nothing any more: another one is waited for.
  void start_over();

  [[nodiscard]] PressStage stage() const;
  // Of the press that is going on or held.
  [[nodiscard]] std::optional<double> highest() const;
  [[nodiscard]] const std::optional<HeldPeak>& held() const { return held_; }

 private:
  [[nodiscard]] double rest_level() const;
  void note_time(double at_s);
  void rest_at(const TimedValue& value);
  void press_on(const TimedValue& value);
  void finish();

  PressRules rules_;
  std::deque<double> times_;         // when the latest values came
  std::deque<TimedValue> resting_;   // the latest values before a press
  std::size_t fallen_ = 0;           // values in a row far below the level of rest
  std::vector<TimedValue> pressed_;  // the last one before the press, then those of it
  std::size_t peak_ = 0;             // index into pressed_
  double rest_ = 0;                  // below the press that goes on
  std::optional<HeldPeak> held_;
};

}  // namespace keenfall::scale
