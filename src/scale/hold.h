// The next reading: armed for a press or for a value that settles, fed with what the scale sends,
// and done once.
//
// In: readings in the order in which they came, with their seconds. Out: number and unit as the
// scale showed them, the line itself, how many values it rests on, and what is to be said about it.
// Where the unit changes, or the scale is not heard for a while, it waits anew. Thresholds: see
// begins_above. Nothing is taken off a reading, and no unit is turned into another.
#pragma once

#include "base/result.h"
#include "materials/quantity.h"
#include "scale/line.h"
#include "scale/peak_hold.h"
#include "scale/stable_hold.h"

#include <cstddef>
#include <optional>
#include <string>
#include <variant>

namespace keenfall::scale {

enum class HoldKind {
  peak,   // readings by pushing: the most before the thread parts
  stable  // readings that settle
};

struct HoldAsked {
  HoldKind kind = HoldKind::peak;
  std::optional<materials::Quantity> full_press;  // what a press is expected to reach; if known

  bool operator==(const HoldAsked&) const = default;
};

struct HeldReading {
  HoldKind kind = HoldKind::peak;
  double number = 0;
  std::string unit;         // as the table of units names it
  std::string line;         // as the scale sent it
  double at_s = 0;          // when it came
  std::size_t samples = 0;  // of a press: values above half of it; else values that agree
  std::optional<HeldPeak> peak;
  std::string note;  // in sentences; empty: nothing is to be said

  bool operator==(const HeldReading&) const = default;
};

// How far a value must rise over the level of rest to be a press, in this unit: the most of 5 gf,
// by which a touched table or a drifting zero stays below it, of 3 % of the full press, since a
// platform swings the more the harder it is pressed, and of two steps of the display. A press of a
// tenth of the usual one is noticed all the same.
[[nodiscard]] double begins_above(const HoldAsked& asked, const std::string& unit, int decimals);

class Hold {
 public:
  // Fails where the full press is not above 0, or no force or mass.
  [[nodiscard]] static base::Result<Hold> armed(const HoldAsked& asked);

  void take(double at_s, const Reading& reading);
  // The scale was lost for now.
  void break_off();

  [[nodiscard]] const HoldAsked& asked() const { return asked_; }
  [[nodiscard]] PressStage stage() const;
  [[nodiscard]] std::optional<double> highest() const;  // of the press, in the scale's unit
  [[nodiscard]] const std::optional<HeldReading>& held() const { return held_; }
  // Why the press before told nothing; empty once another one begins.
  [[nodiscard]] const std::string& trouble() const { return trouble_; }

 private:
  explicit Hold(HoldAsked asked) : asked_(std::move(asked)) {}

  void begin_in(const Reading& reading);
  void hold_peak(const HeldPeak& peak);
  void hold_stable(const HeldStable& stable);

  HoldAsked asked_;
  std::string unit_;  // of what is being watched; empty: nothing came yet
  int decimals_ = 0;  // of its first value
  std::variant<std::monostate, PeakHold, StableHold> watching_;
  std::optional<HeldReading> held_;
  std::string trouble_;
};

}  // namespace keenfall::scale
