#include "wear/used_constants.h"

#include "materials/steel_constants.h"
#include "wear/constant_rows.h"

#include <algorithm>
#include <variant>

namespace keenfall::wear {

namespace {

using materials::UncertainConstant;

constexpr materials::Provenance kOurGuess{"plausible", materials::TrustMark::guessed};

bool holds(const std::vector<NamedConstants>& all, const std::string& name) {
  return std::ranges::find(all, name, &NamedConstants::name) != all.end();
}

UncertainConstant held(const char* name, const char* field, const char* unit, double figure) {
  return {.name = name,
          .field = field,
          .unit = unit,
          .estimate = {.typical = figure, .lo = figure, .hi = figure, .from = kOurGuess}};
}

template <class Rows, class Thing>
std::vector<UncertainConstant> all_of(const Rows& rows, const Thing& thing) {
  std::vector<UncertainConstant> constants;
  for (const auto& row : rows) constants.push_back(constant_of(row, thing));
  return constants;
}

UsedConstants used_by(const TrialPlan& plan) {
  UsedConstants used;
  for (const materials::Microstructure& steel : plan.steels) {
    used.steels.push_back({steel.name, constants_of(steel)});
  }
  for (const WorkPlan& work : plan.works) {
    for (const WorkStep& step : work.steps) {
      const auto* medium = std::get_if<AbrasiveMedium>(&step.what);
      if (medium == nullptr || holds(used.media, medium->name)) continue;
      used.media.push_back({medium->name, all_of(medium_constants(), *medium)});
    }
  }
  for (const TrialEdge& edge : plan.edges) {
    if (holds(used.finishes, edge.finish_name)) continue;
    used.finishes.push_back({edge.finish_name, all_of(finish_constants(), edge.finish)});
  }
  const ApexScenario scenario{
      .flaw_constant = plan.flaw_constant, .damage = plan.damage, .reading = plan.rules};
  used.model = all_of(model_constants(), scenario);
  return used;
}

}  // namespace

UsedConstants used_constants(const TrialPlan& plan) {
  UsedConstants used = used_by(plan);
  used.model.push_back(
      plan.reading == ApexReading::push
          ? held("thread push of bluntness", "thread_push_gf_per_um", "gf/µm", kThreadPushGfPerUm)
          : held("cord draw of bluntness", "cord_draw_mm_per_um", "mm/µm", kCordDrawMmPerUm));
  return used;
}

UsedConstants used_constants(const EdgeQuestion& question) {
  UsedConstants used = used_by(trial_of(question));
  const CutForce force;
  used.model.insert(
      used.model.end(),
      {held("force of an ideal edge",
            "separation_newton_per_mm",
            "N/mm",
            force.separation_newton_per_mm),
       held("force of bluntness",
            "bluntness_newton_per_mm_per_um",
            "N/(mm µm)",
            force.bluntness_newton_per_mm_per_um),
       held("pressure on the flanks", "flank_pressure_mpa", "MPa", force.flank_pressure_mpa),
       held("height of the flanks", "flank_height_mm", "mm", force.flank_height_mm),
       held("friction on the flanks", "friction", "", force.friction)});
  return used;
}

UsedConstants used_constants(const PredictionAsked& asked) {
  return used_by({.steels = {asked.a.steel, asked.b.steel},
                  .works = {asked.work},
                  .edges = {{.finish_name = asked.finish_name, .finish = asked.finish}}});
}

}  // namespace keenfall::wear
