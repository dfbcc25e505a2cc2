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
  put_away();
  auto live = std::make_shared<scale::LiveScale>(
      scale::LiveScale::Settings{.port = use.port, .lines = use.lines});
  const std::scoped_lock lock(mutex_);
  used_ = use;
  std::swap(live_, live);
}

void ScaleInUse::put_away() {
  std::shared_ptr<scale::LiveScale> before;
  const std::scoped_lock lock(mutex_);
  used_.reset();
  std::swap(live_, before);
}

std::shared_ptr<scale::LiveScale> ScaleInUse::live() const {
  const std::scoped_lock lock(mutex_);
  return live_;
}

wire::ScaleTold ScaleInUse::told() const {
  wire::ScaleTold told{.devices = scale::serial_devices()};
  std::shared_ptr<scale::LiveScale> live;
  {
    const std::scoped_lock lock(mutex_);
    told.used = used_;
    live = live_;
  }
  if (live) told.state = live->state();
  return told;
}

std::optional<base::Problem> ScaleInUse::arm(const scale::HoldAsked& asked) {
  const auto live = this->live();
  return live ? live->arm(asked) : no_scale();
}

base::Result<wire::ScaleReading> ScaleInUse::take_held(const std::string& unit) {
  const auto live = this->live();
  if (!live) return base::failed(no_scale());
  auto held = live->take_held();
  if (!held) {
    return base::failed({.kind = base::ProblemKind::conflicting,
                         .sentence = "The scale holds no reading.",
                         .accepted = "one that was armed for, once"});
  }
  const auto reading = materials::convert(held->number, held->unit, unit);
  if (!reading) return base::failed(reading.error());
  return wire::ScaleReading{.reading = *reading,
                            .unit = unit,
                            .line = std::move(held->line),
                            .note = std::move(held->note)};
}

}  // namespace keenfall::workbench
