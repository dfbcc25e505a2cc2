#include "wire/planning_json.h"

#include "planning/chance_words.h"
#include "wire/plan_json.h"

#include <algorithm>
#include <cmath>

namespace keenfall::wire {

namespace {

using planning::ChancesAt;
using verdicts::Verdict;

// What is likely and the most, each about as it is said.
Json range_json(const planning::ExpectedAndMost& range, const std::string& unit) {
  return {{"expected", finite_number(range.expected)},
          {"most", finite_number(range.most)},
          {"words", in_words(range, unit)}};
}

Json hours_json(const planning::ExpectedAndMost& hours) {
  Json range = range_json(hours, "hours");
  range["words"] = hours_in_words(hours);
  return range;
}

double probability_of(const ChancesAt& at, Verdict verdict) { return at.of(verdict).probability; }

double other_way(const ChancesAt& at) {
  return probability_of(at, Verdict::shorter_but_too_little_to_matter) +
         probability_of(at, Verdict::shorter) +
         probability_of(at, Verdict::shorter_by_enough_to_matter);
}

// Of the likeliest of what is told.
double error_of(const ChancesAt& at, int trials) {
  const double likeliest = std::max({probability_of(at, Verdict::longer_and_worth_having),
                                     probability_of(at, Verdict::longer),
                                     probability_of(at, Verdict::longer_but_too_little_to_matter),
                                     probability_of(at, Verdict::practically_the_same),
                                     other_way(at),
                                     probability_of(at, Verdict::not_settled)});
  return planning::chance_from(static_cast<int>(std::lround(likeliest * trials)), trials).error;
}

Json chance_json(const ChancesAt& at, int trials) {
  Json object = {{"true_ratio", finite_number(at.true_ratio)},
                 {"words", planning::if_true(at.true_ratio)}};
  const auto put = [&](const char* key, Verdict verdict) {
    object[key] = finite_number(probability_of(at, verdict));
  };
  put("worth_having", Verdict::longer_and_worth_having);
  put("longer", Verdict::longer);
  put("too_little", Verdict::longer_but_too_little_to_matter);
  put("same", Verdict::practically_the_same);
  object["other"] = finite_number(other_way(at));
  put("other_too_little", Verdict::shorter_but_too_little_to_matter);
  put("other_longer", Verdict::shorter);
  put("other_worth_having", Verdict::shorter_by_enough_to_matter);
  put("not_settled", Verdict::not_settled);
  object["wrong"] = finite_number(at.wrong.probability);
  object["runs_each"] = finite_number(at.runs_each);
  if (trials > 0) object["error"] = finite_number(error_of(at, trials));
  return object;
}

Json assumptions_json(const planning::Assumptions& assumptions) {
  Json object = {{"half_keenness_cuts", Json::array()}, {"run_log_sd", Json::array()}};
  for (const planning::ExpectedCutting& cutting : assumptions.cuttings) {
    object["half_keenness_cuts"].push_back(finite_number(cutting.half_keenness_cuts));
    object["run_log_sd"].push_back(finite_number(cutting.run_log_sd));
    object["shape"] = finite_number(cutting.shape);
  }
  object["true_ratio"] = finite_number(assumptions.true_ratio);
  object["start_reading"] = finite_number(assumptions.start_reading);
  object["start_log_sd"] = finite_number(assumptions.start_log_sd);
  object["block_log_sd"] = finite_number(assumptions.block_log_sd);
  object["specimen_log_sd"] = finite_number(assumptions.specimen_log_sd);
  object["spot_log_sd"] = finite_number(assumptions.spot_log_sd);
  object["reading_log_sd"] = finite_number(assumptions.reading_log_sd);
  return object;
}

Json in_cutting_json(const ChancesInCutting& in, int trials) {
  Json object = {{"cutting", in.cutting},
                 {"words", in.words},
                 {"first_arm", in.first_arm},
                 {"last_arm", in.last_arm},
                 {"chances", Json::array()},
                 {"sentence", in.sentence}};
  for (const ChancesAt& at : in.chances.at) object["chances"].push_back(chance_json(at, trials));
  if (in.runs_needed.runs_each) object["runs_needed"] = *in.runs_needed.runs_each;
  object["runs_needed_words"] = in.runs_needed_words;
  return object;
}

Json measured_arm_json(const MeasuredArm& measured, const materials::ToldIn& told) {
  const planning::OwnScatter& scatter = measured.scatter;
  const planning::ExpectedCutting expected = to_be_assumed(scatter);
  Json object = {{"trial_uid", measured.trial_uid},
                 {"trial", measured.trial},
                 {"blade", measured.arm.blade},
                 {"words", measured.arm_words},
                 {"medium", measured.arm.medium.name}};
  put_text(object, "condition", measured.arm.medium.condition);
  put_text(object, "method_words", in_words(measured.arm.method, told));
  object["kind"] = measured.kind;
  object["counted"] = measured.counted.many;
  object["runs"] = scatter.runs;
  object["run_log_sd"] = {{"median", finite_number(scatter.run_log_sd)},
                          {"lo95", finite_number(scatter.lo95)},
                          {"hi95", finite_number(scatter.hi95)}};
  object["half_keenness_cuts"] = finite_number(scatter.expected.half_keenness_cuts);
  object["to_be_assumed"] = {{"run_log_sd", finite_number(expected.run_log_sd)},
                             {"half_keenness_cuts", finite_number(expected.half_keenness_cuts)}};
  object["percent_words"] = percent_of(scatter);
  object["interval_words"] = interval_of(scatter);
  object["sentence"] = in_words(scatter, measured.arm_words);
  return object;
}

}  // namespace

std::string planned_arms_to_json(const std::vector<trials::PlannedArm>& arms,
                                 const materials::ToldIn& told) {
  return in_one_line({{"arms", planned_arms_json(arms, told)}});
}

std::string checkpoints_to_json(const planning::SuggestedCheckpoints& suggested) {
  return in_one_line({{"checkpoint_cuts", suggested.cuts}, {"sentence", suggested.why}});
}

std::string plan_to_json(const trials::Plan& plan, const materials::ToldIn& told) {
  return in_one_line(plan_json(plan, told));
}

std::string made_plan_to_json(const MadePlan& made) {
  return in_one_line({{"claims", claims_json({made.claim})}, {"plan", plan_json(made.plan)}});
}

std::string cost_to_json(const CostTold& told) {
  const planning::PlanCost& cost = told.cost;
  const auto named = [](const planning::ExpectedAndMost& range, const char* one, const char* many) {
    return range_json(range, range.expected == 1 ? one : many);
  };
  Json object = {{"runs", cost.runs},
                 {"blocks", cost.blocks},
                 {"cuts", range_json(cost.cuts, told.counted.many)}};
  if (cost.stock_m) {
    object["stock_m"] = range_json(*cost.stock_m, "m");
    object["stock_m"]["words"] = stock_in_words(*cost.stock_m, told.told_in);
  }
  object["readings"] = named(cost.readings, "reading", "readings");
  object["minutes_per_run"] = named(cost.minutes_per_run, "minute", "minutes");
  object["hours_per_block"] = hours_json(cost.hours_per_block);
  object["hours"] = hours_json(cost.hours);
  object["evenings"] = named(cost.evenings, "evening", "evenings");
  object["sentence"] = in_words(cost, told.counted, told.told_in);
  object["rests_on"] = sentences_json(cost.rests_on);
  return in_one_line(object);
}

std::string chances_to_json(const ChancesTold& told) {
  Json object = {{"cuttings", Json::array()},
                 {"trials", told.trials},
                 {"seed", whole_number(told.seed.number)},
                 {"worth_it_margin", finite_number(told.worth_it_margin)},
                 {"assumptions", assumptions_json(told.assumptions)},
                 {"sentence", told.sentence},
                 {"rests_on", sentences_json(told.rests_on)}};
  for (const ChancesInCutting& in : told.cuttings) {
    object["cuttings"].push_back(in_cutting_json(in, told.trials));
  }
  return in_one_line(object);
}

std::string measured_to_json(const Measured& measured) {
  Json object = {{"arms", Json::array()}};
  for (const MeasuredArm& arm : measured.arms) {
    object["arms"].push_back(measured_arm_json(arm, measured.told_in));
  }
  put_text(object, "left_out", measured.left_out);
  return in_one_line(object);
}

}  // namespace keenfall::wire
