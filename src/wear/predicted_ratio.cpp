#include "wear/predicted_ratio.h"

#include <algorithm>
#include <utility>

namespace keenfall::wear {

namespace {

// One steel in both blades is one set of constants, drawn once.
ApexScenario scenario_of(const PredictionAsked& asked) {
  ApexScenario scenario{.steels = {asked.a.steel},
                        .medium = asked.medium,
                        .edge = {.finish = asked.finish,
                                 .apex_angle = asked.a.apex_angle,
                                 .length_mm = asked.edge_length_mm}};
  if (asked.b.steel != asked.a.steel) scenario.steels.push_back(asked.b.steel);
  return scenario;
}

std::optional<double> life_of(ApexScenario scenario,
                              std::size_t steel,
                              trials::PerSideAngle apex_angle,
                              const LifeAsked& asked) {
  scenario.edge.apex_angle = apex_angle;
  return median_life_cuts(scenario, steel, asked);
}

void add_card_opinion(RatioPrediction& prediction, const PredictionAsked& asked) {
  const auto depth_of = [](const PredictedBlade& blade) {
    return materials::card_depth_span(
        blade.steel.name, blade.steel.hardness_hrc, inclusive(blade.apex_angle).deg);
  };
  const auto a = depth_of(asked.a);
  const auto b = depth_of(asked.b);
  if (!a || !b) {
    prediction.no_card_because = a ? b.error().sentence : a.error().sentence;
    return;
  }
  prediction.card = CardOpinion{
      .a = *a, .b = *b, .ratio_lo = a->lo_mm / b->hi_mm, .ratio_hi = a->hi_mm / b->lo_mm};
}

}  // namespace

base::Result<RatioPrediction> predicted_ratio(const PredictionAsked& asked,
                                              const base::Executor& executor,
                                              const base::ProgressReport& progress) {
  const ApexScenario scenario = scenario_of(asked);
  const std::size_t last = scenario.steels.size() - 1;
  const auto checked = simulate(simulation_of(scenario, 0, 1), {.seed = asked.life.seed}, executor);
  if (!checked) return base::failed(checked.error());
  const ApexAnswer ratio = [&](const ApexScenario& drawn) -> std::optional<double> {
    const auto a = life_of(drawn, 0, asked.a.apex_angle, asked.life);
    const auto b = life_of(drawn, last, asked.b.apex_angle, asked.life);
    if (!a || !b || *b == 0) return std::nullopt;
    return *a / *b;
  };
  auto found = sensitivity(scenario, ratio, asked.over, executor, progress);
  if (!found) return base::failed(found.error());
  RatioPrediction prediction{
      .ratio = std::move(*found),
      .life_a_cuts = life_of(scenario, 0, asked.a.apex_angle, asked.life),
      .life_b_cuts = life_of(scenario, last, asked.b.apex_angle, asked.life)};
  add_card_opinion(prediction, asked);
  const std::vector<double>& answers = prediction.ratio.answers;
  if (!answers.empty()) {
    const auto longer = std::ranges::count_if(answers, [](double answer) { return answer > 1; });
    prediction.share_longer = static_cast<double>(longer) / static_cast<double>(answers.size());
  }
  return prediction;
}

}  // namespace keenfall::wear
