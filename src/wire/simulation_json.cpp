#include "wire/simulation_json.h"

#include "wire/constants_json.h"
#include "wire/json_pieces.h"
#include "wire/trial_json.h"

#include <algorithm>
#include <optional>
#include <vector>

namespace keenfall::wire {

namespace {

constexpr const char* kNoRangeOfAnEdge =
    "with the usual constants alone: apex --draws gives the range over all that are plausible";
constexpr const char* kNoRangeOfATruth =
    "with the usual constants alone: predict gives the range of a ratio over all that are "
    "plausible";

Json simulated_header(const char* format, const std::string& program_version) {
  return {{"format", format},
          {"format_version", kSimulationFormatVersion},
          {"program_version", program_version},
          {"caution", kSimulatedCaution}};
}

const char* reading_name(wear::ApexReading reading) {
  return reading == wear::ApexReading::push ? "push" : "slice";
}

Json scatter_json(const wear::PracticeScatter& scatter) {
  return {{"run_log_sd", finite_number(scatter.run_log_sd)},
          {"block_log_sd", finite_number(scatter.block_log_sd)},
          {"start_log_sd", finite_number(scatter.start_log_sd)},
          {"spot_log_sd", finite_number(scatter.spot_log_sd)},
          {"reading_log_sd", finite_number(scatter.reading_log_sd)}};
}

Json edges_json(const std::vector<wear::TrialEdge>& edges) {
  Json list = Json::array();
  for (const wear::TrialEdge& edge : edges) {
    list.push_back({{"finish", edge.finish_name},
                    {"apex_angle_per_side_deg", finite_number(edge.apex_angle.deg)}});
  }
  return list;
}

void put_constants_used(Json& object, const wear::UsedConstants& used) {
  SourcesInUse sources;
  object["constants_used"] = used_constants_json(used, sources);
  object["sources"] = sources_json(sources);
}

Json truth_json(const wear::SimulatedTrial& made) {
  Json truth = {{"level", finite_number(made.level)},
                {"no_range_because", kNoRangeOfATruth},
                {"arms", Json::array()}};
  for (const wear::ArmTruth& arm : made.arms) {
    Json object = {{"arm", arm_json(arm.arm)}, {"start_reading", finite_number(arm.start_reading)}};
    put_number(object, "life_cuts", arm.life_cuts);
    truth["arms"].push_back(object);
  }
  truth["ratios"] = Json::array();
  for (const wear::RatioTruth& ratio : made.ratios) {
    truth["ratios"].push_back(
        {{"a", ratio.a}, {"b", ratio.b}, {"ratio", finite_number(ratio.ratio)}});
  }
  return truth;
}

Json numbers_json(const std::vector<double>& numbers) {
  Json list = Json::array();
  for (const double number : numbers) list.push_back(finite_number(number));
  return list;
}

Json section_json(const wear::EdgeLine& section) {
  return {{"segment_length_um", finite_number(section.segment_length_um)},
          {"land_width_um", numbers_json(section.land_width_um)},
          {"height_um", numbers_json(section.height_um)},
          {"fold_height_um", numbers_json(section.fold_height_um)},
          {"chip_depth_um", numbers_json(section.chip_depth_um)}};
}

Json apex_reading_json(const wear::EdgeReading& at, const wear::EdgeReading& start) {
  return {{"cuts", at.cuts},
          {"push_um", finite_number(at.push_um)},
          {"push_ratio", finite_number(at.push_um / start.push_um)},
          {"slice_um", finite_number(at.slice_um)},
          {"slice_ratio", finite_number(at.slice_um / start.slice_um)},
          {"force_newton_per_mm", finite_number(at.force_newton_per_mm)},
          {"mean_land_um", finite_number(at.damage.mean_land_um)},
          {"recession_um", finite_number(at.damage.recession_um)},
          {"chips_per_mm", finite_number(at.damage.chips_per_mm)},
          {"deepest_chip_um", finite_number(at.damage.deepest_chip_um)},
          {"folded_fraction", finite_number(at.damage.rolled_fraction)}};
}

Json life_json(const wear::LifeByReading& life) {
  Json object = Json::object();
  put_number(object, "this_edge_cuts", life.this_edge_cuts);
  put_number(object, "others_lo80_cuts", life.others.lo80_cuts);
  put_number(object, "others_median_cuts", life.others.median_cuts);
  put_number(object, "others_hi80_cuts", life.others.hi80_cuts);
  return object;
}

Json life_range_json(const wear::Sensitivity& life) {
  Json object = {{"draws_without_answer", life.without_answer}};
  if (life.joint) object["cuts"] = interval_json(*life.joint);
  return object;
}

Json over_plausible_json(const wear::PlausibleLives& lives) {
  return {{"draws", lives.push.draws},
          {"push", life_range_json(lives.push)},
          {"slice", life_range_json(lives.slice)}};
}

// A share of nothing may come out a rounding below it.
Json volume_json(double um3) { return finite_number(std::max(0.0, um3)); }

Json lost_json(const wear::MetalLost& lost) {
  return {{"worn_um3", volume_json(lost.worn_um3)},
          {"dented_um3", volume_json(lost.dented_um3)},
          {"folded_um3", volume_json(lost.folded_um3)},
          {"chipped_um3", volume_json(lost.chipped_um3)},
          {"corroded_um3", volume_json(lost.corroded_um3)}};
}

Json counts_json(const wear::DamageCounts& counts) {
  return {{"hits", counts.hits},
          {"dents", counts.dents},
          {"folds", counts.folds},
          {"chips", counts.chips},
          {"twists", counts.twists}};
}

Json curve_json(const CurveInNumbers& curve) {
  Json object = Json::object();
  put_number(object, "wear_scale_cuts", curve.computed.wear_scale_cuts);
  object["hit_slope_per_cut"] = finite_number(curve.computed.hit_slope_per_cut);
  object["fitted_hit_slope_per_cut"] = finite_number(curve.fitted.curve.hit_slope_per_cut);
  object["fitted_hit_saturation_per_cut"] =
      finite_number(curve.fitted.curve.hit_saturation_per_cut);
  object["misfit_fraction"] = finite_number(curve.fitted.root_mean_square_misfit);
  return object;
}

}  // namespace

std::string simulation_to_json(const SimulationDocument& document) {
  const wear::TrialPlan& plan = document.plan;
  Json object = simulated_header("keenfall-simulation", document.program_version);
  object["seed"] = whole_number(plan.seed.number);
  object["reading"] = reading_name(plan.reading);
  object["runs_each"] = plan.runs_each;
  object["blocks"] = plan.blocks;
  object["longest_cuts"] = plan.longest_cuts;
  object["stop_level"] = finite_number(plan.stop_level);
  object["scatter"] = scatter_json(plan.scatter);
  object["edge_length_mm"] = finite_number(plan.edge_length_mm);
  object["repeats"] = plan.repeats;
  object["truth_edges"] = plan.truth_edges;
  object["works"] = Json::array();
  for (const wear::WorkPlan& work : plan.works) object["works"].push_back(work_json(work));
  object["edges"] = edges_json(plan.edges);
  put_constants_used(object, used_constants(plan));
  object["truth"] = truth_json(document.made);
  object["trial"] = trial_json(document.made.trial);
  return object.dump(2) + "\n";
}

std::string apex_to_json(const ApexDocument& document) {
  const wear::EdgeQuestion& question = document.question;
  const wear::EdgeStory& story = document.story;
  Json object = simulated_header("keenfall-apex", document.program_version);
  object["seed"] = whole_number(question.seed.number);
  object["steel"] = question.steel.name;
  object["medium"] = question.work.name;
  object["work"] = work_json(question.work);
  object["apex_angle_per_side_deg"] = finite_number(question.edge.apex_angle.deg);
  object["finish"] = {{"name", question.edge.finish_name},
                      {"land_width_um", finite_number(question.edge.finish.land_width_um)},
                      {"tooth_depth_um", finite_number(question.edge.finish.tooth_depth_um)},
                      {"tooth_spacing_um", finite_number(question.edge.finish.tooth_spacing_um)}};
  object["edge_length_mm"] = finite_number(question.edge_length_mm);
  object["cuts"] = question.cuts;
  object["visible_chip_um"] = finite_number(question.visible_chip_um);
  object["half_keenness"] = {{"other_edges", question.other_edges},
                             {"push", life_json(story.push)},
                             {"slice", life_json(story.slice)}};
  if (document.plausible) {
    object["half_keenness_over_plausible"] = over_plausible_json(*document.plausible);
  } else {
    object["no_range_because"] = kNoRangeOfAnEdge;
  }
  object["shown_edge"] = story.number;
  if (document.curve) object["curve_of_wear_and_hits"] = curve_json(*document.curve);
  const auto& readings = story.edge.readings;
  object["readings"] = Json::array();
  for (const wear::EdgeReading& at : readings) {
    object["readings"].push_back(apex_reading_json(at, readings.front()));
  }
  object["counts"] = counts_json(story.edge.counts);
  object["metal_lost"] = lost_json(story.edge.lost);
  object["section_at_start"] = section_json(readings.front().section.value());
  object["section_at_end"] = section_json(readings.back().section.value());
  put_constants_used(object, used_constants(question));
  return object.dump(2) + "\n";
}

}  // namespace keenfall::wire
