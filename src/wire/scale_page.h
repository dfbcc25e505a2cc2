// The scale at the bench as the app's pages see it: which there are, the one in use and what it
// shows, and the reading it holds. Shapes: docs/wire/api.json (Scale, UseScale, HoldNext).
#pragma once

#include "base/result.h"
#include "scale/hold.h"
#include "scale/live_scale.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

struct UseScale {
  scale::PortSettings port;
  scale::LineRules lines;

  bool operator==(const UseScale&) const = default;
};

struct ScaleReading {
  double reading = 0;  // in `unit`
  std::string unit;
};

struct ScaleTold {
  std::vector<std::string> devices;  // that a scale could be at
  std::optional<UseScale> used;      // absent: none is in use
  scale::ScaleState state;           // of the one in use
  std::uint64_t hold = 0;            // which was armed last; 0: none since it is in use
  std::optional<ScaleReading> held;  // what state.held is in the unit that was asked for
};

[[nodiscard]] std::string scale_to_json(const ScaleTold& told);

[[nodiscard]] base::ResultOrProblems<UseScale> use_scale_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<scale::HoldAsked> hold_next_from(const std::string& body);

}  // namespace keenfall::wire
