#include "page/run_list.h"

#include "base/plain_number.h"
#include "page/figure.h"
#include "page/runs_told.h"
#include "telling/lasting.h"
#include "telling/rounded.h"
#include "telling/run_lasting.h"

#include <fmt/format.h>
#include <algorithm>
#include <functional>
#include <string>
#include <vector>

namespace keenfall::page {

namespace {

using verdicts::Judgement;
using verdicts::RunResult;

// Of runs that were tested: from the last time passed to the first failed.
std::string lasting_head(const Judgement& judgement) {
  if (!judgement.test) return telling::runs_lasting_words(judgement);
  const bool any_read = std::ranges::any_of(
      judgement.runs, [](const RunResult& run) { return run.compared_cuts.has_value(); });
  if (!any_read) return judgement.counted.many + " it passed to failed";
  const double level = judgement.stop_level;
  return fmt::format("{} to {} the start, or passed to failed",
                     judgement.counted.many,
                     judgement.kind.keener_when == trials::KeenerWhen::lower
                         ? base::plain_number(level) + " times"
                         : telling::to_figures(1 / level, 2) + " of");
}

std::string lasting_text(const RunResult& run) {
  const auto lasting = telling::run_lasting(run);
  return lasting ? lasting->words : std::string();
}

// "12, 1 struck"; "28, none used"; "" of a run that was only tested.
std::string readings_text(const ToldRun& told, bool tested) {
  const RunResult& run = *told.result;
  if (told.recorded == 0) return tested ? "" : "none";
  if (!run.not_used_because.empty()) return fmt::format("{}, none used", told.recorded);
  std::string words = std::to_string(run.readings_used);
  if (run.readings_struck > 0) words += fmt::format(", {} struck", run.readings_struck);
  if (run.readings_doubtful > 0) words += fmt::format(", {} doubtful", run.readings_doubtful);
  return words;
}

std::string remarks_text(const RunResult& run) {
  std::string words;
  if (!run.not_used_because.empty()) words = "Not used: " + run.not_used_because;
  for (const std::string& remark : run.remarks) words += (words.empty() ? "" : "; ") + remark;
  return words;
}

struct RunColumn {
  std::string head;
  telling::Side side = telling::Side::left;
  std::function<std::string(const ToldRun&)> cell;
};

std::vector<RunColumn> columns_of(const Judgement& judgement) {
  using telling::Side;
  const std::string& counted = judgement.counted.many;
  const bool tested = judgement.test.has_value();
  return {
      {.head = "run", .cell = [](const ToldRun& run) { return run.result->name; }},
      {.head = "edge", .cell = [](const ToldRun& run) { return run.edge; }},
      {.head = "medium", .cell = [](const ToldRun& run) { return run.medium; }},
      {.head = "block", .cell = [](const ToldRun& run) { return run.result->block; }},
      {.head = "order",
       .side = Side::right,
       .cell =
           [](const ToldRun& run) {
             return run.result->order ? std::to_string(*run.result->order) : std::string();
           }},
      {.head = "start by the curve, " + judgement.unit,
       .side = Side::right,
       .cell =
           [](const ToldRun& run) {
             return run.result->start_reading
                        ? telling::reading_text(run.result->start_reading->median)
                        : std::string();
           }},
      {.head = lasting_head(judgement),
       .side = Side::right,
       .cell = [](const ToldRun& run) { return lasting_text(*run.result); }},
      {.head = counted + " made",
       .side = Side::right,
       .cell = [](const ToldRun& run) { return base::plain_number(run.result->last_cuts); }},
      {.head = "readings",
       .cell = [tested](const ToldRun& run) { return readings_text(run, tested); }},
      {.head = "noticed", .cell = [](const ToldRun& run) { return remarks_text(*run.result); }}};
}

bool have_one_medium(const std::vector<ToldRun>& runs) {
  return std::ranges::all_of(
      runs, [&runs](const ToldRun& run) { return run.medium == runs.front().medium; });
}

// Those that say something of some run; a medium that all runs share is in the caption.
std::vector<RunColumn> columns_that_tell(const Judgement& judgement,
                                         const std::vector<ToldRun>& runs) {
  std::vector<RunColumn> columns = columns_of(judgement);
  std::erase_if(columns, [&runs](const RunColumn& column) {
    if (column.head == "medium") return have_one_medium(runs);
    return std::ranges::all_of(runs, [&](const ToldRun& run) { return column.cell(run).empty(); });
  });
  return columns;
}

// "All 37 runs, 1 of them not used: thread push reading on felt".
std::string caption_of(const Judgement& judgement, const std::vector<ToldRun>& runs) {
  const auto not_used = std::ranges::count_if(
      runs, [](const ToldRun& run) { return !run.result->not_used_because.empty(); });
  std::string caption = runs.size() == 1 ? "The only run" : fmt::format("All {} runs", runs.size());
  if (not_used > 0) {
    caption += runs.size() == 1 ? ", not used" : fmt::format(", {} of them not used", not_used);
  }
  caption += ": " + judgement.kind.words;
  return have_one_medium(runs) ? caption + " on " + runs.front().medium : caption;
}

void add_run(Html& html, const ToldRun& run, const std::vector<RunColumn>& columns) {
  if (run.key.empty()) {
    html.open("tr");
  } else {
    html.open("tr", {{"data-run", run.key}});
  }
  for (const RunColumn& column : columns) {
    const std::string_view side = side_class(column.side);
    if (&column == &columns.front()) {
      html.element("th", column.cell(run), {{"scope", "row"}, {"class", side}});
    } else {
      html.element("td", column.cell(run), {{"class", side}});
    }
  }
  html.close();
}

}  // namespace

void add_run_list(Html& html, const telling::Report& report, std::size_t judgement_index) {
  const Judgement& judgement = report.judgements.at(judgement_index).judgement;
  const std::vector<ToldRun> runs = runs_told(report, judgement_index);
  if (runs.empty()) return;
  const std::vector<RunColumn> columns = columns_that_tell(judgement, runs);
  begin_table(html, caption_of(judgement, runs));
  html.open("thead").open("tr");
  for (const RunColumn& column : columns) {
    html.element("th", column.head, {{"scope", "col"}, {"class", side_class(column.side)}});
  }
  html.close().close().open("tbody");
  for (const ToldRun& run : runs) add_run(html, run, columns);
  html.close().close().close();
}

}  // namespace keenfall::page
