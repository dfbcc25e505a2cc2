#include "wire/app_requests.h"

#include "wire/request_reader.h"

#include <array>
#include <string_view>
#include <utility>

namespace keenfall::wire {

namespace {

constexpr NumberRange kLevel{.lowest = 1,
                             .highest = 1000,
                             .above_lowest = true,
                             .words = "times the start reading: a number above 1, at most 1000"};
constexpr NumberRange kCuts{.words = "a number of cuts, 0 or more"};
constexpr NumberRange kReadInstead{.words = "a reading, as a number: 104"};
constexpr NumberRange kIndex{.highest = 1e9, .words = "a whole number, 0 or more"};
constexpr std::array<std::string_view, 2> kEngines{"quick", "full"};
constexpr std::array<std::string_view, 2> kClaims{"blades", "steels"};
constexpr std::array<std::string_view, 3> kHow{"make", "open", "demo"};
constexpr std::array<std::string_view, 3> kFormats{"html", "json", "csv"};
constexpr std::array<std::string_view, 2> kExports{"json", "csv"};

Question question_from(RequestReader& whole) {
  Question question;
  auto reader = whole.object("question");
  if (!reader) return question;
  question.worth_it_margin = reader->number("worth_it_margin", kMarginRange);
  question.stop_level = reader->number("stop_level", kLevel);
  question.stop_reading = reader->text("stop_reading");
  if (question.stop_level && question.stop_reading) {
    reader->add({.kind = base::ProblemKind::conflicting,
                 .sentence = "A stop level and a stop reading cannot both hold.",
                 .place = {.column = "question.stop_reading", .found = *question.stop_reading},
                 .accepted = "one of them"});
  }
  if (const auto claim = reader->choice("claim", kClaims)) {
    question.claim =
        *claim == 0 ? verdicts::ClaimAbout::these_blades : verdicts::ClaimAbout::the_steels;
  }
  question.kind = reader->text("kind");
  question.with_struck = reader->flag("with_struck").value_or(false);
  question.seed = reader->whole("seed", kSeedRange);
  return question;
}

}  // namespace

base::ResultOrProblems<OpenNotebook> open_notebook_from(const std::string& body) {
  RequestReader reader(body);
  OpenNotebook open;
  reader.require("how", "make, open, demo");
  if (const auto how = reader.choice("how", kHow)) open.how = static_cast<OpenHow>(*how);
  open.path = reader.path("path").value_or("");
  if (open.how != OpenHow::demo) reader.require("path", "a name, or where the file lies");
  return unless_problems(reader, std::move(open));
}

base::ResultOrProblems<Judging> judging_from(const std::string& body) {
  RequestReader reader(body);
  Judging judging;
  reader.require("engine", "quick, full");
  judging.is_quick = reader.choice("engine", kEngines).value_or(0) == 0;
  judging.question = question_from(reader);
  return unless_problems(reader, std::move(judging));
}

base::ResultOrProblems<Strike> strike_from(const std::string& body) {
  RequestReader reader(body);
  Strike strike;
  reader.require("run", "which run: its place in the trial's list, from 0");
  reader.require("reason", "why it does not count, in words: the thread slipped");
  strike.run = static_cast<std::size_t>(reader.whole("run", kIndex).value_or(0));
  if (const auto reading = reader.whole("reading", kIndex)) {
    strike.reading = static_cast<std::size_t>(*reading);
  }
  strike.cuts = reader.number("cuts", kCuts);
  strike.reason = reader.lines("reason").value_or("");
  if (const auto entry = reader.whole("of_entry", kIndex)) {
    strike.of_entry = static_cast<std::int64_t>(*entry);
  }
  strike.instead = reader.number("instead", kReadInstead);
  strike.unit = reader.text("unit").value_or("");
  if (strike.instead && !strike.reading) {
    reader.add({.kind = base::ProblemKind::conflicting,
                .sentence = "A single reading is corrected, and it is not said which.",
                .place = {.column = "instead"},
                .accepted = "reading, beside instead"});
  }
  if (strike.reading && strike.cuts) {
    reader.add({.kind = base::ProblemKind::conflicting,
                .sentence = "A single reading is struck out, or all at a checkpoint.",
                .place = {.column = "cuts"},
                .accepted = "reading or cuts, or neither for the whole run"});
  }
  return unless_problems(reader, std::move(strike));
}

base::ResultOrProblems<ReportRequest> report_request_from(const std::string& body) {
  RequestReader reader(body);
  ReportRequest request;
  reader.require("format", "html, json, csv");
  if (const auto format = reader.choice("format", kFormats)) {
    request.format = static_cast<ReportFormat>(*format);
  }
  request.question = question_from(reader);
  return unless_problems(reader, std::move(request));
}

base::ResultOrProblems<ExportRequest> export_request_from(const std::string& body) {
  RequestReader reader(body);
  ExportRequest request;
  reader.require("as", "json, csv");
  if (const auto as = reader.choice("as", kExports)) request.as = static_cast<ExportAs>(*as);
  request.trial = reader.text("trial").value_or("");
  if (request.as == ExportAs::csv) reader.require("trial", "which trial: its uid");
  if (request.as == ExportAs::json && !request.trial.empty()) {
    reader.add({.kind = base::ProblemKind::conflicting,
                .sentence = "A trial is for a table; as JSON the whole notebook goes.",
                .place = {.column = "trial"},
                .accepted = "csv, or no trial"});
  }
  return unless_problems(reader, std::move(request));
}

base::ResultOrProblems<std::string> why_from(const std::string& body) {
  RequestReader reader(body);
  std::string why = reader.lines("why").value_or("");
  return unless_problems(reader, std::move(why));
}

base::ResultOrProblems<std::string> name_from(const std::string& body) {
  RequestReader reader(body);
  reader.require("name", "what it is to be called");
  std::string name = reader.text("name").value_or("");
  return unless_problems(reader, std::move(name));
}

}  // namespace keenfall::wire
