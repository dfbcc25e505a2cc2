#include "wire/report_json.h"

#include "base/require.h"
#include "base/unseen_character.h"
#include "telling/arm_groups.h"
#include "telling/cuts_compared.h"
#include "telling/cutting_order.h"
#include "telling/lasting.h"
#include "telling/level_words.h"
#include "telling/picture_words.h"
#include "telling/rounded.h"
#include "telling/run_lasting.h"
#include "verdicts/runs_compared.h"
#include "wire/judgement_object.h"
#include "wire/report_object.h"
#include "wire/trial_json.h"

#include <cstddef>
#include <optional>
#include <string_view>

namespace keenfall::wire {

namespace {

Json lasting_json(const verdicts::Judgement& judgement,
                  const verdicts::ArmResult& arm,
                  const verdicts::At& at) {
  Json object = cuts_to_level_json(telling::cuts_compared(arm, at));
  object["words"] = telling::cuts_in_words(judgement, arm, at);
  if (const auto reading = telling::reading_compared(judgement, arm, at)) {
    object["reading"] = finite_number(*reading);
  }
  return object;
}

Json curve_words_json(const verdicts::Judgement& judgement, const verdicts::ArmResult& arm) {
  Json list = Json::array();
  for (const verdicts::CurvePoint& point : arm.curve) {
    list.push_back(
        {{"cuts_words", trials::so_many(telling::place_text(point.cuts), judgement.counted)},
         {"reading_words", telling::curve_point_words(judgement, point)}});
  }
  return list;
}

Json arm_names_json(const verdicts::Judgement& judgement) {
  Json list = Json::array();
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  for (std::size_t i = 0; i < names.size(); ++i) {
    const verdicts::ArmResult& arm = judgement.arms[i];
    const verdicts::At at = verdicts::where_compared(judgement, i);
    Json object = {{"name", names[i].name}, {"label", names[i].label}};
    if (telling::cuts_are_known(judgement, arm, at)) {
      object["lasting"] = lasting_json(judgement, arm, at);
    }
    put_text(object, "start_words", telling::start_words(judgement, arm));
    object["curve"] = curve_words_json(judgement, arm);
    list.push_back(std::move(object));
  }
  return list;
}

// Of a comparison or a factor's effect.
template <class Told>
void put_told_ratio(Json& object, const Told& told, double margin) {
  object["ratio_words"] = telling::ratio_text(told.ratio.median, margin);
  object["interval_words"] = telling::ratio_text(told.simultaneous.lo95, margin) + " to " +
                             telling::ratio_text(told.simultaneous.hi95, margin);
  object["settled"] = verdicts::is_settled(told.verdict);
}

Json told_comparisons_json(const verdicts::Judgement& judgement) {
  Json list = Json::array();
  const double margin = judgement.worth_it_margin;
  for (const verdicts::Comparison& comparison : judgement.comparisons) {
    Json object = {{"a", comparison.a}, {"b", comparison.b}};
    put_told_ratio(object, comparison, margin);
    object["level_words"] = Json::array();
    for (const verdicts::RatioAtLevel& at : comparison.ratio_by_level) {
      object["level_words"].push_back(telling::level_label(judgement, at.level));
    }
    if (const auto levels = telling::levels_compared(judgement, comparison)) {
      object["levels_compared"] = {finite_number(levels->a), finite_number(levels->b)};
    }
    list.push_back(std::move(object));
  }
  return list;
}

Json told_effects_json(const verdicts::Judgement& judgement) {
  Json list = Json::array();
  for (const verdicts::FactorEffect& effect : judgement.factors->effects) {
    Json object = {{"words", telling::effect_name(*judgement.factors, effect)}};
    put_told_ratio(object, effect, judgement.worth_it_margin);
    list.push_back(std::move(object));
  }
  return list;
}

Json blocks_json(const telling::CuttingOrder& order) {
  Json list = Json::array();
  for (const telling::BlockInOrder& block : order.blocks) {
    list.push_back({{"name", block.name}, {"first", block.first}, {"last", block.last}});
  }
  return list;
}

Json arm_groups_json(const verdicts::Judgement& judgement) {
  Json list = Json::array();
  for (const telling::ArmGroup& group : telling::groups_of(judgement)) {
    const verdicts::At at = telling::compared_at(judgement, group);
    list.push_back({{"words", group.medium_words},
                    {"at", at_json(at, judgement.unit)},
                    {"lasting_words", telling::lasting_words(judgement, at)},
                    {"arms", group.arms},
                    {"comparisons", group.comparisons}});
  }
  return list;
}

Json checkpoint_json(const blunting::CheckpointReading& checkpoint) {
  Json object = {{"cuts", finite_number(checkpoint.cuts)},
                 {"reading", finite_number(checkpoint.reading)},
                 {"readings", checkpoint.readings}};
  if (checkpoint.below_resolution) object["below_resolution"] = true;
  return object;
}

Json run_lasting_json(const telling::RunLasting& lasting) {
  Json object = {{"known", telling::in_json(lasting.known)}, {"words", lasting.words}};
  if (lasting.known != telling::RunKnown::none) object["cuts"] = finite_number(lasting.cuts);
  if (lasting.known == telling::RunKnown::between) {
    object["to_cuts"] = finite_number(lasting.to_cuts);
  }
  return object;
}

Json reported_run_json(const verdicts::ReportedRun& run,
                       const verdicts::RunResult& judged,
                       std::optional<int> place) {
  Json object = {{"run", run.run}, {"series", run.series}, {"checkpoints", Json::array()}};
  for (const blunting::CheckpointReading& checkpoint : run.checkpoints) {
    object["checkpoints"].push_back(checkpoint_json(checkpoint));
  }
  if (const auto lasting = telling::run_lasting(judged)) {
    object["lasting"] = run_lasting_json(*lasting);
  }
  if (place) object["place"] = *place;
  if (run.half_keenness_over_arm) {
    object["half_keenness_over_arm"] = finite_number(*run.half_keenness_over_arm);
  }
  return object;
}

Json reported_judgement_json(const telling::ReportedJudgement& reported) {
  const telling::CuttingOrder order = telling::cutting_order(reported.judgement);
  Json judgement = Json::object();
  put_judgement(judgement, reported.judgement);
  Json object = {{"judgement", std::move(judgement)},
                 {"starts_words", telling::starts_words(reported.judgement)},
                 {"levels_words", telling::levels_words(reported.judgement)},
                 {"order_words", telling::order_words(order)},
                 {"blocks", blocks_json(order)},
                 {"names", arm_names_json(reported.judgement)},
                 {"comparisons", told_comparisons_json(reported.judgement)},
                 {"media", arm_groups_json(reported.judgement)},
                 {"runs", Json::array()}};
  if (const auto& across = reported.judgement.media) {
    object["media_lasting_words"] = telling::lasting_words(reported.judgement, across->at);
  }
  for (std::size_t i = 0; i < reported.runs.size(); ++i) {
    object["runs"].push_back(
        reported_run_json(reported.runs[i], reported.judgement.runs.at(i), order.places.at(i)));
  }
  if (reported.judgement.factors) {
    object["factor_effects"] = told_effects_json(reported.judgement);
  }
  return object;
}

// Names come from people's files: a stray byte becomes U+FFFD instead of stopping the report.
std::string dumped(const Json& object, int indent) {
  return object.dump(indent, ' ', false, Json::error_handler_t::replace);
}

// One character of a JSON text as it is written there: itself, or an escape.
std::string_view written_character(std::string_view json) {
  if (!json.starts_with('\\')) return json.substr(0, base::bytes_of_character(json, 0));
  return json.substr(0, json.starts_with("\\u") ? 6 : 2);
}

// Of those that the escapes of a dump stand for, only the newline and the tab are to be seen.
bool is_unseen(std::string_view written) {
  if (!written.starts_with('\\')) {
    return base::is_control(written) || base::turns_direction(written);
  }
  return written.starts_with("\\u00") || written == "\\b" || written == "\\f" || written == "\\r";
}

}  // namespace

Json report_json(const telling::Report& report) {
  base::require(!report.judgements.empty(), "a report holds at least one judgement");
  Json object = {{"format", "keenfall-report"},
                 {"format_version", kReportFormatVersion},
                 {"program_version", report.program_version},
                 {"title", report.title},
                 {"written_on", report.written_on},
                 {"from", report.from},
                 {"judgements", Json::array()}};
  for (const telling::ReportedJudgement& reported : report.judgements) {
    object["judgements"].push_back(reported_judgement_json(reported));
  }
  object["trial"] = trial_json(report.trial, report.judgements.front().judgement.told_in);
  if (!report.judged_again_by.empty()) object["judged_again_by"] = report.judged_again_by;
  if (!report.not_in_its_table.empty()) object["not_in_its_table"] = report.not_in_its_table;
  return object;
}

std::string report_to_json(const telling::Report& report) {
  constexpr int kIndent = 2;
  return dumped(report_json(report), kIndent) + "\n";
}

std::string report_to_json_in_page(const telling::Report& report) {
  constexpr int kOneLine = -1;
  const std::string json = dumped(report_json(report), kOneLine);
  std::string text;
  for (std::size_t at = 0; at < json.size();) {
    const std::string_view written = written_character(std::string_view(json).substr(at));
    if (written == "<") {
      text += "\\u003c";
    } else if (is_unseen(written)) {
      text += "\xEF\xBF\xBD";
    } else {
      text += written;
    }
    at += written.size();
  }
  return text;
}

}  // namespace keenfall::wire
