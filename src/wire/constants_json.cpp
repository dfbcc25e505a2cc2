#include "wire/constants_json.h"

#include <variant>

namespace keenfall::wire {

namespace {

Json constants_json(const std::vector<materials::UncertainConstant>& constants,
                    SourcesInUse& sources) {
  Json list = Json::array();
  for (const auto& constant : constants) list.push_back(constant_json(constant, sources));
  return list;
}

Json named_constants_json(const std::vector<wear::NamedConstants>& all, SourcesInUse& sources) {
  Json list = Json::array();
  for (const wear::NamedConstants& each : all) {
    list.push_back({{"name", each.name}, {"constants", constants_json(each.constants, sources)}});
  }
  return list;
}

}  // namespace

Json constant_json(const materials::UncertainConstant& constant, SourcesInUse& sources) {
  const materials::Estimate& estimate = constant.estimate;
  Json object = {{"name", constant.name},
                 {"field", constant.field},
                 {"unit", constant.unit},
                 {"usual", finite_number(estimate.typical)}};
  if (!estimate.is_known()) {
    object["lo"] = finite_number(estimate.lo);
    object["hi"] = finite_number(estimate.hi);
  }
  put_provenance(object, estimate.from, sources);
  return object;
}

Json used_constants_json(const wear::UsedConstants& used, SourcesInUse& sources) {
  return {{"steels", named_constants_json(used.steels, sources)},
          {"media", named_constants_json(used.media, sources)},
          {"finishes", named_constants_json(used.finishes, sources)},
          {"model", constants_json(used.model, sources)}};
}

Json work_json(const wear::WorkPlan& work) {
  Json object = {{"name", work.name}, {"steps", Json::array()}};
  for (const wear::WorkStep& step : work.steps) {
    if (const auto* medium = std::get_if<wear::AbrasiveMedium>(&step.what)) {
      object["steps"].push_back({{"medium", medium->name}, {"cuts", step.cuts}});
    } else {
      const auto& pause = std::get<wear::WetPause>(step.what);
      object["steps"].push_back(
          {{"pause_hour", finite_number(pause.duration_hour)},
           {"land_growth_um_per_hour", finite_number(pause.land_growth_um_per_hour)}});
    }
  }
  return object;
}

}  // namespace keenfall::wire
