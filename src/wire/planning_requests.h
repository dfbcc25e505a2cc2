// What the app asks for while a trial is planned, read from the bodies of its requests: where it
// cannot be used, every problem at once, each naming its field. Shapes: docs/wire/api.json.
#pragma once

#include "base/result.h"
#include "planning/cost.h"
#include "planning/crossed_arms.h"
#include "planning/suggested_checkpoints.h"
#include "trials/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

struct ArmsAsked {
  planning::ArmChoices choices;
  bool crossed = true;                                // else each blade with its own edge
  std::optional<planning::EdgeChoices> edge_choices;  // in place of choices.edges
};

// As planning/assumptions.h has them; absent or empty is the usual.
struct SaidAssumptions {
  std::vector<std::optional<double>> half_keenness_cuts;  // one for each cutting
  std::vector<std::optional<double>> run_log_sd;          // one for each cutting
  std::optional<double> shape;                            // in all of them
  std::optional<double> true_ratio;
  std::optional<double> start_reading;
  std::optional<double> start_log_sd;
  std::optional<double> block_log_sd;
  std::optional<double> specimen_log_sd;
  std::optional<double> spot_log_sd;
  std::optional<double> reading_log_sd;
};

struct PlanAsked {
  trials::Plan plan;
  std::vector<trials::Claim> claims;
  SaidAssumptions assumptions;
  planning::BenchTimes bench_times;  // what is absent is the usual
  bool is_rough = false;
};

struct OwnScatterAsked {
  std::string blade;
  std::string medium;
};

[[nodiscard]] base::ResultOrProblems<ArmsAsked> arms_asked_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<planning::CheckpointsAsked> checkpoints_asked_from(
    const std::string& body);
[[nodiscard]] base::ResultOrProblems<trials::Plan> plan_from_request(const std::string& body);
[[nodiscard]] base::ResultOrProblems<PlanAsked> plan_asked_from(const std::string& body);
[[nodiscard]] base::ResultOrProblems<OwnScatterAsked> own_scatter_asked_from(
    const std::string& body);

}  // namespace keenfall::wire
