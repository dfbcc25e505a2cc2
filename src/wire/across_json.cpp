#include "wire/across_json.h"

namespace keenfall::wire {

namespace {

Json indices_json(const std::vector<std::size_t>& indices) {
  Json list = Json::array();
  for (const std::size_t index : indices) list.push_back(index);
  return list;
}

Json words_json(const std::vector<std::string>& words) { return sentences_json(words); }

Json blades_json(const verdicts::AcrossMedia& across, const verdicts::Judgement& judgement) {
  Json list = Json::array();
  for (const std::size_t arm : across.media.front().arms) {
    const Json whole = arm_json(judgement.arms.at(arm).arm, judgement.told_in);
    list.push_back({{"blade", whole["blade"]}, {"edge", whole["edge"]}});
  }
  return list;
}

Json medium_json(const verdicts::MediumOfTable& medium, const verdicts::Judgement& judgement) {
  Json object = arm_json(judgement.arms.at(medium.arms.front()).arm, judgement.told_in);
  object.erase("blade");
  object.erase("edge");
  object["arms"] = indices_json(medium.arms);
  object["lasting"] = Json::array();
  for (const auto& cuts : medium.lasting) object["lasting"].push_back(cuts_to_level_json(cuts));
  object["spread_log_sd"] = interval_json(medium.spread);
  object["order"] = indices_json(medium.order);
  object["order_probability"] = finite_number(medium.order_probability);
  return object;
}

Json pair_json(const verdicts::MediaPair& pair) {
  return {{"first", pair.first},
          {"second", pair.second},
          {"lasting_ratio", interval_json(pair.lasting_ratio)},
          {"spread_ratio", interval_json(pair.spread_ratio)},
          {"probability_same_order", finite_number(pair.probability_same_order)},
          {"probability_same_longest", finite_number(pair.probability_same_longest)}};
}

Json interaction_json(const verdicts::MediaInteraction& interaction) {
  return {{"a", interaction.a},
          {"b", interaction.b},
          {"first", interaction.first},
          {"second", interaction.second},
          {"ratio", interval_json(interaction.ratio)},
          {"simultaneous", bounds_json(interaction.simultaneous)},
          {"advantage", verdicts::dependence_in_words(interaction.verdict)},
          {"single_advantage", verdicts::dependence_in_words(interaction.single_verdict)}};
}

Json agreement_json(const verdicts::OrderAgreement& agreement) {
  return {{"kendall_w", finite_number(agreement.kendall_w)},
          {"p", finite_number(agreement.p)},
          {"exact", agreement.exact},
          {"monte_carlo_error", finite_number(agreement.monte_carlo_error)}};
}

Json factor_json(const verdicts::Factor& factor) {
  return {{"what", factor.what},
          {"goes_with", words_json(factor.goes_with)},
          {"levels", words_json(factor.levels)}};
}

template <class Effect>
void put_ratio(Json& object, const Effect& effect) {
  object["ratio"] = interval_json(effect.ratio);
  object["simultaneous"] = bounds_json(effect.simultaneous);
  object["verdict"] = verdicts::in_words(effect.verdict);
}

}  // namespace

Json media_json(const verdicts::AcrossMedia& across, const verdicts::Judgement& judgement) {
  Json object = {{"at", at_json(across.at, judgement.unit)},
                 {"blades", blades_json(across, judgement)},
                 {"media", Json::array()},
                 {"pairs", Json::array()},
                 {"interactions", Json::array()}};
  for (const auto& medium : across.media) object["media"].push_back(medium_json(medium, judgement));
  for (const auto& pair : across.pairs) object["pairs"].push_back(pair_json(pair));
  for (const auto& one : across.interactions) {
    object["interactions"].push_back(interaction_json(one));
  }
  object["agreement"] = agreement_json(across.agreement);
  object["arms_left_out"] = indices_json(across.arms_left_out);
  object["remarks"] = sentences_json(across.remarks);
  return object;
}

Json factors_json(const verdicts::FactorEffects& found, const std::string& unit) {
  Json object = {{"at", at_json(found.at, unit)},
                 {"factors", Json::array()},
                 {"effects", Json::array()},
                 {"interactions", Json::array()}};
  for (const verdicts::Factor& factor : found.factors) {
    object["factors"].push_back(factor_json(factor));
  }
  for (const verdicts::FactorEffect& effect : found.effects) {
    Json one = {{"factor", effect.factor}, {"level", effect.level}};
    put_ratio(one, effect);
    object["effects"].push_back(one);
  }
  for (const verdicts::FactorInteraction& both : found.interactions) {
    Json one = {{"factor", both.factor},
                {"level", both.level},
                {"other_factor", both.other_factor},
                {"other_level", both.other_level}};
    put_ratio(one, both);
    object["interactions"].push_back(one);
  }
  object["arms"] = indices_json(found.arms);
  object["arms_left_out"] = indices_json(found.arms_left_out);
  object["remarks"] = sentences_json(found.remarks);
  return object;
}

Json run_by_run_json(const verdicts::RunByRun& found) {
  Json object = {{"runs_a", found.runs_a},
                 {"runs_b", found.runs_b},
                 {"runs_left_out", found.runs_left_out},
                 {"ratio", finite_number(found.ratio)},
                 {"p", finite_number(found.p)},
                 {"exact", found.exact},
                 {"monte_carlo_error", finite_number(found.monte_carlo_error)},
                 {"smallest_possible_p", finite_number(found.smallest_possible_p)}};
  if (found.by_blocks) {
    object["by_blocks"] = {
        {"blocks", found.by_blocks->blocks},
        {"signed_rank_p", finite_number(found.by_blocks->p)},
        {"smallest_possible_p", finite_number(found.by_blocks->smallest_possible_p)}};
  }
  return object;
}

}  // namespace keenfall::wire
