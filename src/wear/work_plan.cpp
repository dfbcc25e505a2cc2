#include "wear/work_plan.h"

#include <utility>

namespace keenfall::wear {

namespace {

CutMedium dosed(CutMedium medium, double dose_ratio) {
  medium.wear.wear_rate_mm3_per_newton_metre *= dose_ratio;
  medium.particles.hits_per_mm_cut *= dose_ratio;
  return medium;
}

}  // namespace

WorkPlan work_in(const AbrasiveMedium& medium) {
  return {.name = medium.name, .steps = {{.what = medium, .cuts = 1}}};
}

const AbrasiveMedium* only_medium(const WorkPlan& plan) {
  return plan.steps.size() == 1 ? std::get_if<AbrasiveMedium>(&plan.steps.front().what) : nullptr;
}

Schedule schedule_of(const WorkPlan& plan,
                     const materials::Microstructure& steel,
                     const WorkAsked& asked) {
  MixedWork mix;
  for (const WorkStep& step : plan.steps) {
    if (const auto* medium = std::get_if<AbrasiveMedium>(&step.what)) {
      mix.parts.push_back(
          {.what = dosed(medium_for(*medium, steel), asked.dose_ratio), .cuts = step.cuts});
    } else {
      mix.parts.push_back({.what = std::get<WetPause>(step.what)});
    }
  }
  return {{.what = std::move(mix), .cuts = asked.cuts}};
}

}  // namespace keenfall::wear
