#include "wire/resharpening_json.h"

#include "base/require.h"
#include "wire/json_pieces.h"
#include "wire/provenance_json.h"

#include <string_view>

namespace keenfall::wire {

namespace {

using sharpening::ResharpeningQuestion;
using sharpening::StoneEffort;

Json edge_to_sharpen_json(const sharpening::EdgeToSharpen& edge) {
  return {{"bevel_angle_per_side_deg", finite_number(edge.bevel.bevel_angle.deg)},
          {"primary_angle_per_side_deg", finite_number(edge.bevel.primary_angle.deg)},
          {"thickness_behind_edge_mm", finite_number(edge.bevel.thickness_behind_edge_mm)},
          {"edge_length_mm", finite_number(edge.edge_length_mm)},
          {"land_um", finite_number(edge.damage.land_um)},
          {"deepest_chip_um", finite_number(edge.damage.deepest_chip_um)}};
}

Json work_json(const sharpening::WayOfWorking& work) {
  Json object = {{"force_newton", finite_number(work.stroke.force_newton)},
                 {"stroke_length_mm", finite_number(work.stroke.length_mm)},
                 {"passes_per_minute", finite_number(work.passes_per_minute)}};
  if (work.dress_every_passes) {
    object["dress_every_passes"] = finite_number(*work.dress_every_passes);
    object["minutes_per_dressing"] = finite_number(work.minutes_per_dressing);
  }
  return object;
}

Json with_typical_json(double typical, const numerics::Interval& draws) {
  Json object = {{"typical", finite_number(typical)}};
  object.update(interval_json(draws));
  return object;
}

Json stone_json(const StoneEffort& effort) {
  return {{"stone", effort.stone.name},
          {"grit", effort.stone.grit},
          {"resistance_ratio", finite_number(effort.resistance_ratio)},
          {"glazing_passes", finite_number(effort.glazing_passes)},
          {"blunt_share_fraction", finite_number(effort.stone.blunt_share_fraction.typical)},
          {"passes", with_typical_json(effort.typical.passes, effort.passes)},
          {"dressings", finite_number(effort.typical.dressings)},
          {"minutes", with_typical_json(effort.typical.minutes, effort.minutes)},
          {"times_first", interval_json(effort.times_first)}};
}

Json hangs_on_json(const sharpening::HangsOn& each, SourcesInUse& sources) {
  const materials::Estimate& estimate = each.constant.estimate;
  Json object = {{"constant", each.constant.name}};
  put_text(object, "unit", each.constant.unit);
  object["typical"] = finite_number(estimate.typical);
  object["lo"] = finite_number(estimate.lo);
  object["hi"] = finite_number(estimate.hi);
  put_provenance(object, estimate.from, sources);
  object["passes_at_lo"] = finite_number(each.passes_at_lo);
  object["passes_at_hi"] = finite_number(each.passes_at_hi);
  return object;
}

std::string_view where_name(sharpening::Where where) {
  switch (where) {
    case sharpening::Where::inside:
      return "inside";
    case sharpening::Where::at_first:
      return "at_once";
    case sharpening::Where::at_last:
      return "as_late_as_may_be";
  }
  return {};
}

Json estimate_json(const sharpening::Estimate& estimate) {
  return {{"typical", finite_number(estimate.typical)},
          {"lo", finite_number(estimate.lo)},
          {"hi", finite_number(estimate.hi)}};
}

Json count_json(const sharpening::CountedStrokes& counted) {
  return {{"passes", finite_number(counted.passes)},
          {"force_newton", finite_number(counted.stroke.force_newton)},
          {"stroke_length_mm", finite_number(counted.stroke.length_mm)},
          {"removed_mm3", estimate_json(counted.removed_mm3)}};
}

Json calibration_json(const sharpening::Calibration& found) {
  return {{"wear_mm3_per_newton_m", finite_number(found.wear_mm3_per_newton_m)},
          {"wear_of_model_mm3_per_newton_m", estimate_json(found.wear_of_model)},
          {"fresh_mm3_per_pass", interval_json(found.fresh_mm3_per_pass)},
          {"fresh_of_model_mm3_per_pass", interval_json(found.fresh_of_model_mm3_per_pass)},
          {"passes_of_model", interval_json(found.passes_of_model)}};
}

Json moment_json(const sharpening::MomentOverDraws& moment) {
  return {{"cuts", finite_number(moment.typical.cuts)},
          {"minutes_per_1000_cuts", finite_number(moment.typical.minutes_per_1000_cuts)},
          {"where", where_name(moment.typical.where)},
          {"cuts_drawn", interval_json(moment.cuts)},
          {"minutes_per_1000_cuts_drawn", interval_json(moment.minutes_per_1000_cuts)},
          {"fraction_at_once", finite_number(moment.fraction_at_first)},
          {"fraction_as_late_as_may_be", finite_number(moment.fraction_at_last)},
          {"draws", moment.draws}};
}

Json way_json(const WayBack& way, SourcesInUse& sources) {
  Json object = {{"way", way.micro_bevel_angle ? "micro_bevel" : "reset_bevel"}};
  if (way.micro_bevel_angle) {
    object["micro_bevel_angle_per_side_deg"] = finite_number(way.micro_bevel_angle->deg);
  }
  object["apex_rise_um"] = finite_number(way.found.steel.apex_rise_um);
  object["area_um2"] = finite_number(way.found.steel.area_um2);
  object["steel_mm3"] = finite_number(way.found.steel_mm3);
  object["thickness_after_mm"] = finite_number(way.found.steel.thickness_after_mm);
  object["stones"] = Json::array();
  for (const StoneEffort& effort : way.found.stones) object["stones"].push_back(stone_json(effort));
  object["hangs_on"] = Json::array();
  for (const auto& each : way.found.hangs_on) {
    object["hangs_on"].push_back(hangs_on_json(each, sources));
  }
  if (way.found.calibration) {
    object["calibration"] = calibration_json(*way.found.calibration);
  }
  if (way.best_moment) object["best_moment"] = moment_json(*way.best_moment);
  return object;
}

}  // namespace

std::string resharpening_to_json(const ResharpeningDocument& document) {
  base::require(!document.ways.empty(), "there is a way back");
  const ResharpeningQuestion& question = document.question;
  Json object = {{"format", "keenfall-resharpening"},
                 {"format_version", kResharpeningFormatVersion},
                 {"program_version", document.program_version},
                 {"edge", edge_to_sharpen_json(question.edge)},
                 {"steel",
                  {{"name", question.steel.name},
                   {"hardness_hrc", finite_number(question.steel.hardness_hrc)}}},
                 {"work", work_json(question.work)}};
  if (document.growth) {
    object["seen_after_cuts"] = finite_number(document.growth->seen_after_cuts);
    object["setup_minutes"] = finite_number(document.growth->setup_minutes);
  }
  if (question.counted) object["counted"] = count_json(*question.counted);
  object["seed"] = whole_number(question.seed.number);
  object["draws"] = question.draws;
  SourcesInUse sources;
  object["ways"] = Json::array();
  for (const WayBack& way : document.ways) object["ways"].push_back(way_json(way, sources));
  object["sources"] = sources_json(sources);
  return object.dump(2) + "\n";
}

}  // namespace keenfall::wire
