#include "wear/predicted_ratio.h"

#include <utility>
#include <vector>

namespace keenfall::wear {

namespace {

bool is_one_steel(const PredictionAsked& asked) { return asked.a.steel.name == asked.b.steel.name; }

// One steel in both blades is one set of constants, drawn once, whatever its hardness.
ApexScenario scenario_of(const PredictionAsked& asked) {
  ApexScenario scenario{.steels = {asked.a.steel},
                        .work = asked.work,
                        .edge = {.finish = asked.finish,
                                 .apex_angle = asked.a.apex_angle,
                                 .length_mm = asked.edge_length_mm}};
  if (!is_one_steel(asked)) scenario.steels.push_back(asked.b.steel);
  return scenario;
}

// The scenario as the second blade has it: its steel first, and its angle.
ApexScenario of_second_blade(ApexScenario scenario, const PredictionAsked& asked) {
  scenario.edge.apex_angle = asked.b.apex_angle;
  if (!is_one_steel(asked)) {
    scenario.steels.front() = scenario.steels.back();
    return scenario;
  }
  materials::Microstructure& steel = scenario.steels.front();
  steel.matrix_hv *= asked.b.steel.matrix_hv / asked.a.steel.matrix_hv;
  steel.hardness_hrc = asked.b.steel.hardness_hrc;
  steel.bulk_hv = asked.b.steel.bulk_hv;
  return scenario;
}

void add_card_opinion(RatioPrediction& prediction, const PredictionAsked& asked) {
  const auto blade_of = [](const PredictedBlade& blade) {
    return materials::CardTestBlade{.steel = blade.steel.name,
                                    .hardness_hrc = blade.steel.hardness_hrc,
                                    .inclusive_angle_deg = inclusive(blade.apex_angle).deg};
  };
  const auto compared = materials::card_depths_compared(blade_of(asked.a), blade_of(asked.b));
  if (compared) {
    prediction.card = *compared;
  } else {
    prediction.no_card_because = compared.error().sentence;
  }
}

// Of the draws with an answer; equals count half.
double share_longer_of(const std::vector<double>& answers) {
  double longer = 0;
  for (const double answer : answers) longer += answer > 1 ? 1 : (answer == 1 ? 0.5 : 0);
  return longer / static_cast<double>(answers.size());
}

}  // namespace

base::Result<RatioPrediction> predicted_ratio(const PredictionAsked& asked,
                                              const base::Executor& executor,
                                              const base::ProgressReport& progress) {
  const ApexScenario scenario = scenario_of(asked);
  for (const ApexScenario& blade : {scenario, of_second_blade(scenario, asked)}) {
    const auto checked = simulate(
        simulation_of(blade, 0, 1), {.runs = asked.life.runs, .seed = asked.life.seed}, executor);
    if (!checked) return base::failed(checked.error());
  }
  const auto life_a = [&](const ApexScenario& drawn) {
    return median_life_cuts(drawn, 0, asked.life);
  };
  const auto life_b = [&](const ApexScenario& drawn) {
    return median_life_cuts(of_second_blade(drawn, asked), 0, asked.life);
  };
  const ApexAnswer ratio = [&](const ApexScenario& drawn) -> std::optional<double> {
    const auto a = life_a(drawn);
    const auto b = life_b(drawn);
    if (!a || !b || *b == 0) return std::nullopt;
    return *a / *b;
  };
  auto found = sensitivity(scenario, ratio, asked.over, executor, progress);
  if (!found) return base::failed(found.error());
  RatioPrediction prediction{
      .ratio = std::move(*found), .life_a_cuts = life_a(scenario), .life_b_cuts = life_b(scenario)};
  add_card_opinion(prediction, asked);
  if (prediction.ratio.joint) {
    prediction.share_longer = share_longer_of(prediction.ratio.answers);
  }
  return prediction;
}

}  // namespace keenfall::wear
