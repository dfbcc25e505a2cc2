// Where long work stands, as JSON (docs/wire/api.json, Work and Started).
#pragma once

#include "base/result.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

enum class WorkState { waiting, running, done, failed, cancelled };

struct WorkTold {
  std::string id;
  WorkState state = WorkState::waiting;
  std::string words;    // what it does now
  double fraction = 0;  // 0 to 1
  std::optional<double> seconds_left = std::nullopt;
  std::vector<base::Problem> problems = {};  // why it failed, and
  std::string failure = {};                  // what was nobody's slip, as a sentence
  std::string result = {};                   // path of what it made
};

[[nodiscard]] std::string work_to_json(const WorkTold& work);
// {"work": ...}
[[nodiscard]] std::string begun_work_to_json(const WorkTold& work);

}  // namespace keenfall::wire
