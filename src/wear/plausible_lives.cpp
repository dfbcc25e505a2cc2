#include "wear/plausible_lives.h"

#include <utility>

namespace keenfall::wear {

namespace {

// The first or the second half of the work.
base::ProgressReport half_of(const base::ProgressReport& progress, double done_before) {
  return [&progress, done_before](const base::Progress& part) {
    return progress({.fraction_done = done_before + part.fraction_done / 2, .stage = part.stage});
  };
}

}  // namespace

ApexScenario scenario_of(const EdgeQuestion& question) {
  return {.steels = {question.steel},
          .work = question.work,
          .edge = {.finish = question.edge.finish,
                   .apex_angle = question.edge.apex_angle,
                   .length_mm = question.edge_length_mm}};
}

base::Result<PlausibleLives> plausible_lives(const ApexScenario& scenario,
                                             const LivesAsked& asked,
                                             const base::Executor& executor,
                                             const base::ProgressReport& progress) {
  const auto life_by = [&](ApexReading reading) -> ApexAnswer {
    return [&asked, reading](const ApexScenario& drawn) {
      return median_life_cuts(
          drawn, 0, {.reading = reading, .runs = asked.runs, .seed = asked.over.seed});
    };
  };
  auto push =
      sensitivity(scenario, life_by(ApexReading::push), asked.over, executor, half_of(progress, 0));
  if (!push) return base::failed(push.error());
  auto slice = sensitivity(
      scenario, life_by(ApexReading::slice), asked.over, executor, half_of(progress, 0.5));
  if (!slice) return base::failed(slice.error());
  return PlausibleLives{.push = std::move(*push), .slice = std::move(*slice)};
}

}  // namespace keenfall::wear
