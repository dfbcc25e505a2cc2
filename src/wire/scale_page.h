// The scale at the bench as the app's pages see it: which there are, the one in use and what it
// shows, and the reading it holds. Shapes: docs/wire/api.json (Scale, UseScale, HoldNext,
// ScaleReading).
#pragma once

#include "base/result.h"
#include "scale/hold.h"
#include "scale/live_scale.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

struct UseScale {
  scale::PortSettings port;
  scale::LineRules lines;

  bool operator==(const UseScale&) const = default;
};

struct ScaleTold {
  std::vector<std::string> devices;  // that a scale could be at
  std::optional<UseScale> used;      // absent: none is in use
  scale::ScaleState state;           // of the one in use
};

// As it is read at the bench.
struct ScaleReading {
  double reading = 0;  // in `unit`
  std::string unit;
  std::string line;  // as the scale sent it
  std::string note;  // in sentences; empty: nothing is to be said
};

[[nodiscard]] std::string scale_to_json(const ScaleTold& told);
[[nodiscard]] std::string scale_reading_to_json(const ScaleReading& reading);

[[nodiscard]] base::ResultOrProblems<UseScale> use_scale_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<scale::HoldAsked> hold_next_from(const std::string& body);
// The unit in which the reading is wanted.
[[nodiscard]] base::ResultOrProblems<std::string> take_from_scale_from(const std::string& body);

}  // namespace keenfall::wire
