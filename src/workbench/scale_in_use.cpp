#include "workbench/scale_in_use.h"

#include "materials/units.h"
#include "scale/serial_devices.h"

#include <utility>

namespace keenfall::workbench {

namespace {

base::Problem no_scale() {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "No scale is in use at the bench.",
          .accepted = "one that is chosen first, or a reading that is typed"};
}

}  // namespace

// A line is locked by whoever reads it, so the one before is let go of first.
void ScaleInUse::use(const wire::UseScale& use) {
  const std::scoped_lock alone(changing_);
  put_away();
  auto live = std::make_shared<scale::LiveScale>(
      scale::LiveScale::Settings{.port = use.port, .lines = use.lines});
  const std::scoped_lock lock(mutex_);
  used_ = use;
  live_ = std::move(live);
}

void ScaleInUse::put_away() {
  std::shared_ptr<scale::LiveScale> before;
  const std::scoped_lock lock(mutex_);
  used_.reset();
  hold_ = 0;
  std::swap(live_, before);
}

wire::ScaleTold ScaleInUse::told(const std::string& unit) const {
  wire::ScaleTold told{.devices = scale::serial_devices()};
  const std::scoped_lock lock(mutex_);
  told.used = used_;
  if (!live_) return told;
  told.hold = hold_;
  told.state = live_->state();
  if (!told.state.held) return told;
  const scale::HeldReading& held = *told.state.held;
  const std::string wanted = unit.empty() ? held.unit : unit;
  const auto reading = materials::convert(held.number, held.unit, wanted);
  if (reading) {
    told.held = wire::ScaleReading{.reading = *reading, .unit = wanted};
  } else {
    told.state.hold_trouble =
        "What the scale holds is not in " + wanted + ": " + reading.error().sentence;
  }
  return told;
}

std::optional<base::Problem> ScaleInUse::arm(const scale::HoldAsked& asked) {
  const std::scoped_lock lock(mutex_);
  if (!live_) return no_scale();
  ++hold_;
  return live_->arm(asked);
}

}  // namespace keenfall::workbench
