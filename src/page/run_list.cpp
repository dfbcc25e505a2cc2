#include "page/run_list.h"

#include "telling/arm_groups.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <string>
#include <vector>

namespace keenfall::page {

namespace {

using verdicts::Judgement;
using verdicts::RunResult;

// "59", "at least 255", "60 to 70" of a run that was tested, "" where it is not known.
std::string lasting_text(const RunResult& run) {
  using telling::cuts_text;
  if (run.lasted_cuts && run.failed_by_cuts) {
    return cuts_text(*run.lasted_cuts) + " to " + cuts_text(*run.failed_by_cuts);
  }
  if (run.failed_by_cuts) return "at most " + cuts_text(*run.failed_by_cuts);
  if (run.lasted_cuts) return "at least " + cuts_text(*run.lasted_cuts);
  if (!run.half_keenness_cuts) return {};
  if (run.stopped_before_half_keenness) return "at least " + cuts_text(run.last_cuts);
  return cuts_text(run.half_keenness_cuts->median);
}

std::string readings_text(const RunResult& run) {
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

void add_cell(Html& html, const std::string& words, std::string_view side) {
  html.element("td", words, {{"class", side}});
}

void add_run(Html& html,
             const Judgement& judgement,
             const RunResult& run,
             const std::vector<telling::ArmName>& names,
             const std::string& key) {
  html.open("tr", {{"data-run", key}});
  html.element("th", run.name, {{"scope", "row"}, {"class", "words"}});
  add_cell(html, names[run.arm].name, "words");
  add_cell(html, judgement.arms[run.arm].arm.medium.name, "words");
  add_cell(html, run.block, "words");
  add_cell(html, run.order ? std::to_string(*run.order) : std::string(), "number");
  add_cell(html,
           run.start_reading ? telling::reading_text(run.start_reading->median) : std::string(),
           "number");
  add_cell(html, lasting_text(run), "number");
  add_cell(html, telling::cuts_text(run.last_cuts), "number");
  add_cell(html, readings_text(run), "number");
  add_cell(html, remarks_text(run), "words");
  html.close();
}

}  // namespace

void add_run_list(Html& html, const Judgement& judgement, std::size_t judgement_index) {
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  const std::string& counted = judgement.counted.many;
  const std::string caption =
      fmt::format("All {} runs: {}", judgement.runs.size(), judgement.kind.words);
  html.open("div",
            {{"class", "scrolled"}, {"tabindex", "0"}, {"role", "group"}, {"aria-label", caption}});
  html.open("table").element("caption", caption).open("thead").open("tr");
  const auto head = [&html](const std::string& words, std::string_view side) {
    html.element("th", words, {{"scope", "col"}, {"class", side}});
  };
  head("run", "words");
  head("edge", "words");
  head("medium", "words");
  head("block", "words");
  head("order", "number");
  head("start, " + judgement.unit, "number");
  head(judgement.test ? counted + " it passed to failed" : counted + " to half keenness", "number");
  head(counted + " made", "number");
  head("readings", "number");
  head("noticed", "words");
  html.close().close().open("tbody");
  for (std::size_t i = 0; i < judgement.runs.size(); ++i) {
    add_run(html, judgement, judgement.runs[i], names, fmt::format("{}:{}", judgement_index, i));
  }
  html.close().close().close();
}

}  // namespace keenfall::page
