#include "scale/hold.h"

#include "base/plain_number.h"
#include "materials/units.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace keenfall::scale {

namespace {

constexpr double kTouchGf = 5;
constexpr double kTouchShare = 0.03;
constexpr double kTouchSteps = 2;
constexpr double kEmptySteps = 3;          // an empty scale wanders by a step or two
constexpr double kNegligibleShare = 0.01;  // of a press: less than readings scatter
constexpr int kFigures = 2;

double step_of(int decimals) { return std::pow(10.0, -decimals); }

std::string with_unit(double number, const std::string& unit) {
  return base::with_figures(number, kFigures) + " " + unit;
}

// How low it may read, and what to do about it.
std::string coarse_note(const HeldPeak& peak, const std::string& unit) {
  if (!peak.rise_per_s || peak.refresh_s <= 0) {
    return "Too few values came during the press to say how fast it rose: the peak may be higher. "
           "Press more slowly, or set the scale to send more often.";
  }
  return "The peak reads about " + with_unit(peak.reads_low_by, unit) +
         " low on average: a value came every " + base::with_figures(peak.refresh_s, kFigures) +
         " s while the press rose by " + with_unit(*peak.rise_per_s, unit) +
         " a second. Press more slowly, or set the scale to send more often.";
}

std::string rest_note(double rest, const std::string& unit, int decimals) {
  return "The scale stood at " + base::with_decimals(rest, decimals) + " " + unit +
         " before the press; nothing was taken off. Set it to zero before the next one.";
}

void add_sentence(std::string& note, const std::string& sentence) {
  note += (note.empty() ? "" : " ") + sentence;
}

}  // namespace

double begins_above(const HoldAsked& asked, const std::string& unit, int decimals) {
  const double touch = materials::convert(kTouchGf, "gf", unit).value_or(0);
  const double full =
      asked.full_press
          ? materials::convert(asked.full_press->number, asked.full_press->unit, unit).value_or(0)
          : 0;
  return std::max({touch, kTouchShare * full, kTouchSteps * step_of(decimals)});
}

base::Result<Hold> Hold::armed(const HoldAsked& asked) {
  if (asked.full_press) {
    const auto force = materials::convert(asked.full_press->number, asked.full_press->unit, "gf");
    if (!force) return base::failed(force.error());
    if (*force <= 0) {
      return base::failed({.sentence = "a full press is above 0, not " +
                                       base::plain_number(asked.full_press->number) + " " +
                                       asked.full_press->unit});
    }
  }
  return Hold(asked);
}

PressStage Hold::stage() const {
  if (held_) return PressStage::held;
  const auto* press = std::get_if<PeakHold>(&watching_);
  return press == nullptr ? PressStage::waiting : press->stage();
}

std::optional<double> Hold::highest() const {
  const auto* press = std::get_if<PeakHold>(&watching_);
  return press == nullptr ? std::nullopt : press->highest();
}

void Hold::begin_in(const Reading& reading) {
  unit_ = reading.unit;
  decimals_ = reading.decimals;
  if (asked_.kind == HoldKind::peak) {
    watching_ = PeakHold({.begins_above = begins_above(asked_, unit_, decimals_)});
    return;
  }
  const double step = step_of(decimals_);
  watching_ = StableHold({.above = kEmptySteps * step, .tolerance = step});
}

void Hold::break_off() {
  if (held_) return;
  if (stage() == PressStage::pressing) {
    trouble_ = "The scale was lost during the press, which tells nothing. Press again.";
  }
  watching_ = std::monostate();
  unit_.clear();
}

void Hold::take(double at_s, const Reading& reading) {
  if (held_) return;
  if (reading.is_overload || !reading.number) {
    break_off();
    trouble_ =
        "It was more than the scale can show, so it tells nothing. Take less, or a larger scale.";
    return;
  }
  const bool is_another_unit = !unit_.empty() && reading.unit != unit_;
  if (is_another_unit) {
    break_off();
    trouble_ = "The scale changed its unit. Press again.";
  }
  if (std::holds_alternative<std::monostate>(watching_)) begin_in(reading);
  const TimedValue value{.at_s = at_s, .value = *reading.number, .line = reading.line};
  if (auto* press = std::get_if<PeakHold>(&watching_)) {
    const PressStage before = press->stage();
    press->take(value);
    if (before == PressStage::waiting && press->stage() == PressStage::pressing) trouble_.clear();
    if (before == PressStage::pressing && press->stage() == PressStage::waiting) {
      trouble_ = "The press was not heard to its end, or stayed on. Press again.";
    }
    if (press->held()) hold_peak(*press->held());
  } else if (auto* settling = std::get_if<StableHold>(&watching_)) {
    settling->take(value, reading.stability);
    if (settling->held()) hold_stable(*settling->held());
  }
}

void Hold::hold_peak(const HeldPeak& peak) {
  trouble_.clear();
  held_ = HeldReading{.kind = HoldKind::peak,
                      .number = peak.peak.value,
                      .unit = unit_,
                      .line = peak.peak.line,
                      .at_s = peak.peak.at_s,
                      .samples = peak.samples,
                      .peak = peak};
  if (peak.is_coarse) add_sentence(held_->note, coarse_note(peak, unit_));
  const double height = peak.peak.value - peak.rest;
  const bool is_off_zero =
      std::abs(peak.rest) > std::max(kTouchSteps * step_of(decimals_), kNegligibleShare * height);
  if (is_off_zero) add_sentence(held_->note, rest_note(peak.rest, unit_, decimals_));
}

void Hold::hold_stable(const HeldStable& stable) {
  trouble_.clear();
  held_ = HeldReading{.kind = HoldKind::stable,
                      .number = stable.value.value,
                      .unit = unit_,
                      .line = stable.value.line,
                      .at_s = stable.value.at_s,
                      .samples = stable.samples};
}

}  // namespace keenfall::scale
