#include "wire/prediction_json.h"

#include "wire/constants_json.h"
#include "wire/json_pieces.h"
#include "wire/simulation_json.h"

#include <optional>

namespace keenfall::wire {

namespace {

Json blade_json(const wear::PredictedBlade& blade) {
  return {{"steel", blade.steel.name},
          {"hardness_hrc", finite_number(blade.steel.hardness_hrc)},
          {"apex_angle_per_side_deg", finite_number(blade.apex_angle.deg)}};
}

Json effect_json(const wear::ConstantEffect& effect, SourcesInUse& sources) {
  Json object = constant_json(effect.constant, sources);
  object["lo"] = finite_number(effect.constant.estimate.lo);
  object["hi"] = finite_number(effect.constant.estimate.hi);
  put_number(object, "ratio_at_lo", effect.answer_at_lo);
  put_number(object, "ratio_at_hi", effect.answer_at_hi);
  object["rank_correlation"] = finite_number(effect.rank_correlation);
  return object;
}

Json span_json(const materials::Span& mm) {
  return {{"lo_mm", finite_number(mm.lo)}, {"hi_mm", finite_number(mm.hi)}};
}

Json card_json(const materials::CardDepthsCompared& card) {
  return {{"a", span_json(card.a_mm)},
          {"b", span_json(card.b_mm)},
          {"ratio_lo", finite_number(card.ratio.lo)},
          {"ratio_hi", finite_number(card.ratio.hi)}};
}

Json asked_json(const wear::PredictionAsked& asked) {
  return {{"a", blade_json(asked.a)},
          {"b", blade_json(asked.b)},
          {"medium", asked.work.name},
          {"reading", asked.life.reading == wear::ApexReading::push ? "push" : "slice"},
          {"level", finite_number(asked.life.level)},
          {"finish", asked.finish_name},
          {"land_width_um", finite_number(asked.finish.land_width_um)},
          {"tooth_depth_um", finite_number(asked.finish.tooth_depth_um)},
          {"tooth_spacing_um", finite_number(asked.finish.tooth_spacing_um)},
          {"edge_length_mm", finite_number(asked.edge_length_mm)},
          {"longest_cuts", asked.life.longest_cuts},
          {"runs", asked.life.runs},
          {"draws", asked.over.draws},
          {"seed", whole_number(asked.over.seed.number)}};
}

}  // namespace

std::string prediction_to_json(const PredictionDocument& document) {
  const wear::RatioPrediction& predicted = document.predicted;
  const wear::Sensitivity& ratio = predicted.ratio;
  Json object = {{"format", "keenfall-prediction"},
                 {"format_version", kPredictionFormatVersion},
                 {"program_version", document.program_version},
                 {"caution", kSimulatedCaution},
                 {"asked", asked_json(document.asked)}};
  put_number(object, "ratio", ratio.usual_answer);
  if (ratio.joint) object["ratio_over_plausible"] = interval_json(*ratio.joint);
  put_number(object, "share_longer", predicted.share_longer);
  object["draws_without_answer"] = ratio.without_answer;
  put_number(object, "half_keenness_a_cuts", predicted.life_a_cuts);
  put_number(object, "half_keenness_b_cuts", predicted.life_b_cuts);
  if (predicted.card) object["card_depth"] = card_json(*predicted.card);
  put_text(object, "no_card_depth_because", predicted.no_card_because);
  SourcesInUse sources;
  object["constants"] = Json::array();
  for (const auto& effect : ratio.effects) {
    object["constants"].push_back(effect_json(effect, sources));
  }
  object["constants_used"] = used_constants_json(used_constants(document.asked), sources);
  object["sources"] = sources_json(sources);
  return object.dump(2) + "\n";
}

}  // namespace keenfall::wire
