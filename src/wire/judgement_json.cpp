#include "wire/judgement_json.h"

#include "base/require.h"
#include "telling/headline.h"
#include "wire/across_json.h"
#include "wire/json_pieces.h"
#include "wire/judgement_object.h"
#include "wire/told_object.h"

#include <string_view>
#include <utility>

namespace keenfall::wire {

namespace {

using verdicts::Judgement;

std::string_view matching_name(verdicts::Matching matching) {
  switch (matching) {
    case verdicts::Matching::matched:
      return "matched";
    case verdicts::Matching::differs:
      return "differs";
    case verdicts::Matching::not_recorded:
      return "not_recorded";
  }
  return {};
}

std::string_view claim_name(verdicts::ClaimAbout claim) {
  switch (claim) {
    case verdicts::ClaimAbout::these_blades:
      return "these blades";
    case verdicts::ClaimAbout::the_steels:
      return "the steels";
  }
  return {};
}

Json kind_json(const Judgement& judgement) {
  Json object = {{"name", judgement.kind.name}};
  put_text(object, "words", judgement.kind.words);
  object["unit"] = judgement.unit;
  put_text(object, "thread", judgement.thread);
  object["keener_when"] = keener_when_name(judgement.kind.keener_when);
  return object;
}

Json test_json(const verdicts::TestJudged& test) {
  Json object = Json::object();
  put_text(object, "words", test.words);
  if (test.rung) object["rung"] = *test.rung;
  if (test.level) object["level"] = finite_number(*test.level);
  return object;
}

Json run_json(const verdicts::RunResult& run) {
  Json object = {{"arm", run.arm}, {"name", run.name}};
  put_text(object, "specimen", run.specimen);
  put_text(object, "block", run.block);
  if (run.order) object["order"] = *run.order;
  object["checkpoints"] = run.checkpoints;
  object["readings_used"] = run.readings_used;
  object["readings_struck"] = run.readings_struck;
  object["readings_doubtful"] = run.readings_doubtful;
  object["last_cuts"] = finite_number(run.last_cuts);
  if (run.start_reading) object["start_reading"] = interval_json(*run.start_reading);
  if (run.half_keenness_cuts) object["half_keenness_cuts"] = interval_json(*run.half_keenness_cuts);
  if (run.lasted_cuts) object["lasted_cuts"] = finite_number(*run.lasted_cuts);
  if (run.failed_by_cuts) object["failed_by_cuts"] = finite_number(*run.failed_by_cuts);
  object["stopped_before_half_keenness"] = run.stopped_before_half_keenness;
  if (run.compared_cuts) object["compared_cuts"] = interval_json(*run.compared_cuts);
  object["stopped_before_compared"] = run.stopped_before_compared;
  put_text(object, "not_used_because", run.not_used_because);
  object["remarks"] = sentences_json(run.remarks);
  return object;
}

Json curve_json(const std::vector<verdicts::CurvePoint>& curve) {
  Json list = Json::array();
  for (const verdicts::CurvePoint& point : curve) {
    Json object = {{"cuts", finite_number(point.cuts)}};
    object.update(interval_json(point.reading));
    object["beyond_what_was_cut"] = point.beyond_what_was_cut;
    list.push_back(object);
  }
  return list;
}

Json arm_result_json(const verdicts::ArmResult& arm, const Judgement& judgement) {
  Json object = arm_json(arm.arm, judgement.told_in);
  object["runs"] = arm.runs;
  object["specimens"] = arm.specimens;
  object["longest_run_cuts"] = finite_number(arm.longest_run_cuts);
  object["runs_that_never_blunt"] = arm.runs_that_never_blunt;
  if (arm.start_reading) object["start_reading"] = interval_json(*arm.start_reading);
  if (arm.half_keenness) object["half_keenness_cuts"] = cuts_to_level_json(*arm.half_keenness);
  if (arm.stop_level) {
    Json level = {{"level", finite_number(judgement.stop_level)}};
    level.update(cuts_to_level_json(*arm.stop_level));
    object["level_cuts"] = level;
  }
  if (arm.test) object["test_cuts"] = cuts_to_level_json(*arm.test);
  if (arm.common_reading) object["common_reading_cuts"] = cuts_to_level_json(*arm.common_reading);
  object["run_scatter_log_sd"] = interval_json(arm.run_scatter_log_sd);
  if (arm.shape) object["shape"] = interval_json(*arm.shape);
  object["curve"] = curve_json(arm.curve);
  return object;
}

Json ratio_by_level_json(const std::vector<verdicts::RatioAtLevel>& ratios) {
  Json list = Json::array();
  for (const verdicts::RatioAtLevel& at_level : ratios) {
    Json object = {{"level", finite_number(at_level.level)}};
    object.update(interval_json(at_level.ratio));
    object["beyond_what_was_cut"] = at_level.beyond_what_was_cut;
    list.push_back(object);
  }
  return list;
}

Json also_differs_json(const std::vector<verdicts::AlsoDiffers>& differences) {
  Json list = Json::array();
  for (const verdicts::AlsoDiffers& difference : differences) {
    Json object = {{"what", difference.what}, {"matching", matching_name(difference.matching)}};
    put_text(object, "a", difference.a);
    put_text(object, "b", difference.b);
    list.push_back(object);
  }
  return list;
}

Json further_runs_json(const verdicts::FurtherRuns& further) {
  if (further.runs_each) return *further.runs_each;
  return "over 40";
}

Json second_opinion_json(const verdicts::SecondOpinion& opinion) {
  return {{"ratio", interval_json(opinion.ratio)},
          {"simultaneous", bounds_json(opinion.simultaneous)},
          {"verdict", verdicts::in_words(opinion.verdict)},
          {"agrees", opinion.agrees}};
}

Json look_json(const verdicts::LookReport& look) {
  Json object = {{"planned_runs_each", look.planned},
                 {"fewest_runs", look.fewest_runs},
                 {"most_runs", look.most_runs}};
  if (look.number) object["number"] = *look.number;
  if (look.next_runs) object["next_runs_each"] = *look.next_runs;
  object["stretch_95"] = finite_number(look.stretch_95);
  object["stretch_90"] = finite_number(look.stretch_90);
  return object;
}

Json comparison_json(const verdicts::Comparison& comparison, const Judgement& judgement) {
  Json object = {{"a", arm_json(judgement.arms.at(comparison.a).arm, judgement.told_in)},
                 {"b", arm_json(judgement.arms.at(comparison.b).arm, judgement.told_in)},
                 {"at", at_json(comparison.at, judgement.unit)},
                 {"ratio", interval_json(comparison.ratio)}};
  if (comparison.ratio_these_blades) {
    object["ratio_these_blades"] = interval_json(*comparison.ratio_these_blades);
  }
  Json simultaneous = bounds_json(comparison.simultaneous);
  simultaneous["comparisons"] = comparison.family_size;
  object["simultaneous"] = simultaneous;
  object["ratio_by_level"] = ratio_by_level_json(comparison.ratio_by_level);
  object["probability_longer"] = finite_number(comparison.probability_longer);
  object["probability_worth_having"] = finite_number(comparison.probability_worth_having);
  object["verdict"] = verdicts::in_words(comparison.verdict);
  object["single_verdict"] = verdicts::in_words(comparison.single_verdict);
  object["near_boundary"] = comparison.near_boundary;
  object["beyond_what_was_cut"] = comparison.beyond_what_was_cut;
  if (comparison.further_runs) {
    object["further_runs_each"] = further_runs_json(*comparison.further_runs);
  }
  object["claim_about"] = claim_name(comparison.claim_about);
  if (comparison.run_by_run) object["run_by_run"] = run_by_run_json(*comparison.run_by_run);
  if (comparison.quick) object["quick"] = second_opinion_json(*comparison.quick);
  if (comparison.with_struck) {
    object["with_struck_readings"] = second_opinion_json(*comparison.with_struck);
  }
  if (comparison.without_doubtful) {
    object["without_doubtful_readings"] = second_opinion_json(*comparison.without_doubtful);
  }
  if (comparison.look) object["look"] = look_json(*comparison.look);
  object["also_differs"] = also_differs_json(comparison.also_differs);
  object["remarks"] = sentences_json(comparison.remarks);
  return object;
}

std::string_view covariate_name(verdicts::Covariate covariate) {
  switch (covariate) {
    case verdicts::Covariate::start_reading:
      return "start_reading";
    case verdicts::Covariate::order_of_cutting:
      return "order_of_cutting";
  }
  return {};
}

Json covariates_json(const std::vector<verdicts::CovariateEffect>& effects) {
  Json list = Json::array();
  for (const verdicts::CovariateEffect& effect : effects) {
    list.push_back({{"covariate", covariate_name(effect.covariate)},
                    {"half_keenness_ratio", interval_json(effect.ratio)}});
  }
  return list;
}

Json fit_json(const verdicts::FitReport& fit) {
  return {{"usable", fit.usable},
          {"reasons", sentences_json(fit.reasons)},
          {"model", fit.model},
          {"model_parts", sentences_json(fit.model_parts)},
          {"r_hat_max", finite_number(fit.r_hat_max)},
          {"ess_bulk_min", finite_number(fit.ess_bulk_min)},
          {"ess_tail_min", finite_number(fit.ess_tail_min)},
          {"divergences", fit.divergences},
          {"draws", fit.draws},
          {"seed", whole_number(fit.seed)},
          {"cpu_seconds", finite_number(fit.cpu_seconds)}};
}

}  // namespace

void put_judgement(Json& object, const Judgement& judgement) {
  object["trial"] = judgement.trial;
  object["counted"] = judgement.counted.many;
  object["kind"] = kind_json(judgement);
  object["worth_it_margin"] = finite_number(judgement.worth_it_margin);
  object["stop_level"] = finite_number(judgement.stop_level);
  if (judgement.stop_reading) object["stop_reading"] = finite_number(*judgement.stop_reading);
  if (judgement.test) object["test"] = test_json(*judgement.test);
  object["runs"] = Json::array();
  for (const auto& run : judgement.runs) object["runs"].push_back(run_json(run));
  object["arms"] = Json::array();
  for (const auto& arm : judgement.arms) object["arms"].push_back(arm_result_json(arm, judgement));
  object["comparisons"] = Json::array();
  for (const auto& comparison : judgement.comparisons) {
    object["comparisons"].push_back(comparison_json(comparison, judgement));
  }
  if (judgement.media) object["media_compared"] = media_json(*judgement.media, judgement);
  if (judgement.factors)
    object["factor_effects"] = factors_json(*judgement.factors, judgement.unit);
  object["covariates"] = covariates_json(judgement.covariates);
  object["curve_check"] = {{"passed", judgement.curve_check.passed},
                           {"smallest_p", finite_number(judgement.curve_check.smallest_p)},
                           {"where", sentences_json(judgement.curve_check.where)}};
  object["fit"] = fit_json(judgement.fit);
  object["cannot_say"] = sentences_json(judgement.cannot_say);
  object["taken_as"] = sentences_json(judgement.taken_as);
}

std::string judgement_to_json(const JudgementDocument& document) {
  base::require(!document.judgements.empty(), "a judgement document holds at least one judgement");
  Json object = {{"format", "keenfall-judgement"},
                 {"format_version", kJudgementFormatVersion},
                 {"program_version", document.program_version},
                 {"headline", sentences_json(telling::headline(document.judgements))}};
  put_judgement(object, document.judgements.front());
  Json others = Json::array();
  for (std::size_t i = 1; i < document.judgements.size(); ++i) {
    Json other = Json::object();
    put_judgement(other, document.judgements[i]);
    others.push_back(other);
  }
  object["also_judged"] = others;
  constexpr int kIndent = 2;
  // Names come from people's files: a stray byte becomes U+FFFD instead of stopping the answer.
  return object.dump(kIndent, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::vector<telling::Sentence> headline_in(const std::string& document) {
  const Json object = Json::parse(document, nullptr, false);
  std::vector<telling::Sentence> sentences;
  if (!object.is_object() || !object.contains("headline")) return sentences;
  for (const Json& said : object["headline"]) {
    telling::Sentence sentence;
    for (const Json& part : said.value("words", Json::array())) {
      const std::string tone = part.value("tone", "");
      sentence.words.push_back({.text = part.value("text", ""),
                                .tone = tone == "settled"       ? telling::Tone::settled
                                        : tone == "not_settled" ? telling::Tone::not_settled
                                                                : telling::Tone::plain});
    }
    sentences.push_back(std::move(sentence));
  }
  return sentences;
}

}  // namespace keenfall::wire
