#include "wire/report_json.h"

#include "base/require.h"
#include "telling/arm_groups.h"
#include "telling/cuts_compared.h"
#include "telling/lasting.h"
#include "telling/rounded.h"
#include "wire/judgement_object.h"
#include "wire/trial_json.h"

namespace keenfall::wire {

namespace {

Json lasting_json(const verdicts::Judgement& judgement,
                  const verdicts::ArmResult& arm,
                  const verdicts::At& at) {
  Json object = cuts_to_level_json(telling::cuts_compared(arm, at));
  object["words"] = telling::cuts_in_words(judgement, arm, at);
  return object;
}

Json arm_names_json(const verdicts::Judgement& judgement) {
  Json list = Json::array();
  const verdicts::At at = telling::compared_at(judgement);
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  for (std::size_t i = 0; i < names.size(); ++i) {
    const verdicts::ArmResult& arm = judgement.arms[i];
    Json object = {{"name", names[i].name}, {"label", names[i].label}};
    if (telling::cuts_are_known(judgement, arm, at)) {
      object["lasting"] = lasting_json(judgement, arm, at);
    }
    list.push_back(std::move(object));
  }
  return list;
}

Json told_comparisons_json(const verdicts::Judgement& judgement) {
  Json list = Json::array();
  const double margin = judgement.worth_it_margin;
  for (const verdicts::Comparison& comparison : judgement.comparisons) {
    list.push_back({{"a", comparison.a},
                    {"b", comparison.b},
                    {"ratio_words", telling::ratio_text(comparison.ratio.median, margin)},
                    {"interval_words",
                     telling::ratio_text(comparison.simultaneous.lo95, margin) + " to " +
                         telling::ratio_text(comparison.simultaneous.hi95, margin)},
                    {"settled", verdicts::is_settled(comparison.verdict)}});
  }
  return list;
}

Json arm_groups_json(const verdicts::Judgement& judgement) {
  Json list = Json::array();
  for (const telling::ArmGroup& group : telling::groups_of(judgement)) {
    list.push_back(
        {{"words", group.medium_words}, {"arms", group.arms}, {"comparisons", group.comparisons}});
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

Json reported_run_json(const verdicts::ReportedRun& run) {
  Json object = {{"run", run.run}, {"series", run.series}, {"checkpoints", Json::array()}};
  for (const blunting::CheckpointReading& checkpoint : run.checkpoints) {
    object["checkpoints"].push_back(checkpoint_json(checkpoint));
  }
  if (run.half_keenness_over_arm) {
    object["half_keenness_over_arm"] = finite_number(*run.half_keenness_over_arm);
  }
  return object;
}

Json reported_judgement_json(const telling::ReportedJudgement& reported) {
  Json judgement = Json::object();
  put_judgement(judgement, reported.judgement);
  Json object = {{"judgement", std::move(judgement)},
                 {"lasting_words", telling::lasting_words(reported.judgement)},
                 {"names", arm_names_json(reported.judgement)},
                 {"comparisons", told_comparisons_json(reported.judgement)},
                 {"media", arm_groups_json(reported.judgement)},
                 {"runs", Json::array()}};
  for (const verdicts::ReportedRun& run : reported.runs) {
    object["runs"].push_back(reported_run_json(run));
  }
  return object;
}

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
  object["trial"] = trial_json(report.trial);
  return object;
}

// Names come from people's files: a stray byte becomes U+FFFD instead of stopping the report.
std::string dumped(const Json& object, int indent) {
  return object.dump(indent, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

std::string report_to_json(const telling::Report& report) {
  constexpr int kIndent = 2;
  return dumped(report_json(report), kIndent) + "\n";
}

std::string report_to_json_in_page(const telling::Report& report) {
  constexpr int kOneLine = -1;
  std::string text;
  // JSON has "<" inside of strings only, where an escape says the same (RFC 8259, section 7).
  for (const char letter : dumped(report_json(report), kOneLine)) {
    if (letter == '<') {
      text += "\\u003c";
    } else {
      text += letter;
    }
  }
  return text;
}

}  // namespace keenfall::wire
