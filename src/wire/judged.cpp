#include "wire/judged.h"

#include "telling/headline.h"
#include "telling/told.h"
#include "wire/report_object.h"
#include "wire/told_object.h"

#include <string_view>
#include <utility>
#include <vector>

namespace keenfall::wire {

namespace {

Json question_json(const Question& question) {
  Json object = Json::object();
  put_number(object, "worth_it_margin", question.worth_it_margin);
  put_number(object, "stop_level", question.stop_level);
  if (question.stop_reading) object["stop_reading"] = *question.stop_reading;
  if (question.claim) {
    object["claim"] = *question.claim == verdicts::ClaimAbout::the_steels ? "steels" : "blades";
  }
  if (question.kind) object["kind"] = *question.kind;
  object["with_struck"] = question.with_struck;
  if (question.seed) object["seed"] = *question.seed;
  return object;
}

}  // namespace

std::string judged_to_json(const Judged& judged) {
  Json object = {{"engine", judged.is_quick ? "quick" : "full"},
                 {"of_entry", judged.of_entry},
                 {"question", question_json(judged.question)},
                 {"report", report_json(judged.report)},
                 {"told", Json::array()}};
  std::vector<verdicts::Judgement> judgements;
  for (const telling::ReportedJudgement& reported : judged.report.judgements) {
    object["told"].push_back(told_json(telling::told(reported.judgement)));
    judgements.push_back(reported.judgement);
  }
  object["headline"] = sentences_json(telling::headline(judgements));
  object["can_ask_again"] = judged.can_ask_again;
  put_text(object, "counted_words", judged.counted_words);
  put_text(object, "own_scatter_words", judged.own_scatter_words);
  return in_one_line(object);
}

}  // namespace keenfall::wire
