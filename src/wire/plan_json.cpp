#include "wire/plan_json.h"

#include "materials/told_in.h"
#include "planning/arm_words.h"
#include "trials/reading_kind.h"

#include <string>

namespace keenfall::wire {

namespace {

Json planned_cutting_json(const trials::PlannedCutting& cutting) {
  Json object = {{"medium", cutting.medium.name}};
  put_text(object, "condition", cutting.medium.condition);
  put_text(object, "lot", cutting.lot);
  object["method"] = cut_method_json(cutting.method);
  object["checkpoint_cuts"] = Json::array();
  for (const double cuts : cutting.checkpoint_cuts) {
    object["checkpoint_cuts"].push_back(finite_number(cuts));
  }
  return object;
}

// What readings are to be typed in, where that is another unit than the planned one.
std::string other_unit(const trials::PlannedReading& reading, const materials::ToldIn& told) {
  const trials::ReadingKind* const kind = trials::find_reading_kind(reading.kind);
  const std::string& own = reading.unit.empty() && kind != nullptr ? kind->unit : reading.unit;
  const std::string unit = told_unit(own, told);
  return unit == own ? std::string() : unit;
}

Json planned_reading_json(const trials::PlannedReading& reading, const materials::ToldIn& told) {
  Json object = {{"kind", reading.kind}};
  put_text(object, "unit", reading.unit);
  put_text(object, "told_unit", other_unit(reading, told));
  put_text(object, "thread", reading.thread);
  put_text(object, "thread_lot", reading.thread_lot);
  object["repeats"] = reading.repeats;
  if (!reading.stations.empty()) object["stations"] = sentences_json(reading.stations);
  return object;
}

Json stop_json(const trials::StopRule& stop) {
  Json object = Json::object();
  put_number(object, "level", stop.level);
  put_number(object, "reading", stop.reading);
  put_number(object, "force_cap_newton", stop.force_cap_newton);
  return object;
}

Json planned_run_json(const trials::PlannedRun& run) {
  Json object = {{"arm", run.arm}};
  put_text(object, "specimen", run.specimen);
  object["block"] = run.block;
  object["order"] = run.order;
  return object;
}

template <class Parts, class ToJson>
Json each_of(const Parts& parts, ToJson to_json) {
  Json list = Json::array();
  for (const auto& part : parts) list.push_back(to_json(part));
  return list;
}

}  // namespace

Json claims_json(const std::vector<trials::Claim>& claims) {
  return each_of(claims, [](const trials::Claim& claim) -> Json {
    return {{"words", claim.words}, {"worth_it_margin", finite_number(claim.worth_it_margin)}};
  });
}

Json planned_arms_json(const std::vector<trials::PlannedArm>& arms, const materials::ToldIn& told) {
  const std::vector<std::string> words = planning::words_of_arms(arms, told);
  Json list = Json::array();
  for (std::size_t a = 0; a < arms.size(); ++a) {
    list.push_back({{"blade", arms[a].blade},
                    {"edge", edge_json(arms[a].edge, told)},
                    {"cutting", arms[a].cutting},
                    {"words", words[a]}});
  }
  return list;
}

Json plan_json(const trials::Plan& plan, const materials::ToldIn& told) {
  Json object = {{"counted", plan.counted.many},
                 {"cuttings", each_of(plan.cuttings, planned_cutting_json)},
                 {"arms", planned_arms_json(plan.arms, told)},
                 {"reading", planned_reading_json(plan.reading, told)}};
  if (plan.start_gate) {
    object["start_gate"] = {
        {"target_reading", finite_number(plan.start_gate->target_reading)},
        {"tolerance_fraction", finite_number(plan.start_gate->tolerance_fraction)}};
  }
  object["stop"] = stop_json(plan.stop);
  object["runs_each"] = plan.runs_each;
  if (!plan.looks.empty()) object["looks"] = plan.looks;
  put_text(object, "house_blade", plan.house_blade);
  object["order_seed"] = whole_number(plan.order_seed.number);
  object["runs"] = each_of(plan.runs, planned_run_json);
  return object;
}

}  // namespace keenfall::wire
