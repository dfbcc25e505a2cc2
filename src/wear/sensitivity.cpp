#include "wear/sensitivity.h"

#include "numerics/along_range.h"
#include "numerics/random.h"
#include "numerics/rank_correlation.h"
#include "numerics/summaries.h"
#include "wear/uncertain_constants.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <numeric>

namespace keenfall::wear {

namespace {

// Shares of the way from lo to hi, one row per draw, each constant's stratified over the draws.
std::vector<std::vector<double>> latin_hypercube(std::size_t draws,
                                                 std::size_t constants,
                                                 base::Seed seed) {
  std::vector<std::vector<double>> shares(draws, std::vector<double>(constants));
  for (std::size_t c = 0; c < constants; ++c) {
    numerics::RandomStream random(seed, c);
    std::vector<std::size_t> strata(draws);
    std::iota(strata.begin(), strata.end(), std::size_t{0});
    for (std::size_t i = draws - 1; i > 0; --i) std::swap(strata[i], strata[random.below(i + 1)]);
    for (std::size_t d = 0; d < draws; ++d) {
      shares[d][c] =
          (static_cast<double>(strata[d]) + random.uniform()) / static_cast<double>(draws);
    }
  }
  return shares;
}

// The scenarios to answer: as usual, each constant at both ends, then the joint draws.
std::vector<ApexScenario> scenarios_of(const ApexScenario& scenario,
                                       const std::vector<ScenarioConstant>& constants,
                                       const std::vector<std::vector<double>>& shares) {
  std::vector<ApexScenario> scenarios{scenario};
  for (const ScenarioConstant& each : constants) {
    for (const double end : {each.constant.estimate.lo, each.constant.estimate.hi}) {
      scenarios.push_back(scenario);
      each.set(scenarios.back(), end);
    }
  }
  for (const auto& row : shares) {
    scenarios.push_back(scenario);
    for (std::size_t c = 0; c < constants.size(); ++c) {
      const materials::Estimate& estimate = constants[c].constant.estimate;
      constants[c].set(scenarios.back(), numerics::along_range(estimate.lo, estimate.hi, row[c]));
    }
  }
  return scenarios;
}

// As many answers as scenarios; none: asked to stop.
std::optional<std::vector<std::optional<double>>> answered(
    const std::vector<ApexScenario>& scenarios,
    const ApexAnswer& answer,
    const base::Executor& executor,
    const base::ProgressReport& progress) {
  std::vector<std::optional<double>> answers(scenarios.size());
  std::atomic<std::size_t> done = 0;
  std::atomic<bool> stopped = false;
  std::vector<base::Task> tasks;
  for (std::size_t i = 0; i < scenarios.size(); ++i) {
    tasks.push_back([&, i] {
      if (stopped) return;
      answers[i] = answer(scenarios[i]);
      const double fraction = static_cast<double>(++done) / static_cast<double>(scenarios.size());
      if (!progress({.fraction_done = fraction, .stage = "varying what is not well known"})) {
        stopped = true;
      }
    });
  }
  executor(tasks);
  if (stopped && done < scenarios.size()) return std::nullopt;
  return answers;
}

void add_joint(Sensitivity& found,
               std::span<const std::optional<double>> answers,
               const std::vector<std::vector<double>>& shares) {
  std::vector<double>& known = found.answers;
  std::vector<std::vector<double>> shares_of(found.effects.size());
  for (std::size_t d = 0; d < answers.size(); ++d) {
    if (!answers[d]) {
      ++found.without_answer;
      continue;
    }
    known.push_back(*answers[d]);
    for (std::size_t c = 0; c < shares_of.size(); ++c) shares_of[c].push_back(shares[d][c]);
  }
  constexpr int kFewMissing = 20;
  if (known.size() < 2 || kFewMissing * found.without_answer > found.draws) return;
  for (std::size_t c = 0; c < shares_of.size(); ++c) {
    found.effects[c].rank_correlation = numerics::rank_correlation(shares_of[c], known);
  }
  found.joint = numerics::interval_of(known);
}

}  // namespace

base::Result<Sensitivity> sensitivity(const ApexScenario& scenario,
                                      const ApexAnswer& answer,
                                      const SensitivityAsked& asked,
                                      const base::Executor& executor,
                                      const base::ProgressReport& progress) {
  if (asked.draws < 2) {
    return base::failed({.kind = base::ProblemKind::bad_value,
                         .sentence = "a joint spread needs several draws",
                         .place = {.found = std::to_string(asked.draws)},
                         .accepted = "2 or more"});
  }
  const auto constants = uncertain_constants(scenario);
  const auto draws = static_cast<std::size_t>(asked.draws);
  const auto shares = latin_hypercube(draws, constants.size(), asked.seed);
  const auto answers =
      answered(scenarios_of(scenario, constants, shares), answer, executor, progress);
  if (!answers) {
    return base::failed({.kind = base::ProblemKind::interrupted,
                         .sentence = "stopped before all constants were varied"});
  }
  Sensitivity found{.usual_answer = answers->front(), .draws = asked.draws};
  for (std::size_t c = 0; c < constants.size(); ++c) {
    found.effects.push_back({.constant = constants[c].constant,
                             .answer_at_lo = (*answers)[1 + 2 * c],
                             .answer_at_hi = (*answers)[2 + 2 * c]});
  }
  add_joint(found, std::span(*answers).subspan(1 + 2 * constants.size()), shares);
  std::ranges::stable_sort(found.effects, std::ranges::greater{}, [](const ConstantEffect& effect) {
    return std::abs(effect.rank_correlation);
  });
  return found;
}

}  // namespace keenfall::wear
