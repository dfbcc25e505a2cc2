#include "page/report_parts.h"

#include "page/data_address.h"
#include "page/figure.h"
#include "page/figures_of_all.h"
#include "page/figures_of_medium.h"
#include "page/how_done.h"
#include "page/methods.h"
#include "page/planned_words.h"
#include "page/run_list.h"
#include "page/struck_list.h"
#include "page/told_html.h"
#include "telling/answer_sentences.h"
#include "telling/arm_groups.h"
#include "telling/listed.h"
#include "telling/simulated.h"
#include "verdicts/read_and_tested.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <optional>
#include <string_view>

namespace keenfall::page {

namespace {

using telling::Report;
using verdicts::Judgement;

bool has_section(const Judged& judged, std::string_view id) {
  return std::ranges::count(judged.told.sections, id, &telling::Section::id) > 0;
}

// The section with this name, where the judgement has one.
void add_told(Html& html, const Judged& judged, std::string_view id) {
  const auto section = std::ranges::find(judged.told.sections, id, &telling::Section::id);
  if (section != judged.told.sections.end()) add_section(html, *section, judged.heading);
}

void add_if(Html& html, const std::optional<Figure>& figure) {
  if (figure) add_figure(html, *figure);
}

// What would settle each comparison that is not settled.
void add_further_runs(Html& html, const Judged& judged) {
  const Judgement& judgement = judged.judgement;
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  bool begun = false;
  for (const telling::ArmGroup& group : telling::groups_of(judgement)) {
    for (const std::size_t index : group.comparisons) {
      const verdicts::Comparison& pair = judgement.comparisons[index];
      if (!pair.further_runs) continue;
      if (!begun) html.element(judged.heading, "What would settle it").open("ul");
      begun = true;
      html.element("li",
                   fmt::format("{} against {} on {}: {}",
                               names[pair.a].name,
                               names[pair.b].name,
                               group.medium_words,
                               telling::further_runs_sentence(pair)));
    }
  }
  if (begun) html.close();
}

// How answers from readings and answers from tests stand to each other, where there are both.
std::string read_and_tested_sentence(const std::vector<Judged>& all) {
  const auto across = std::ranges::find_if(all, [](const Judged& judged) {
    return judged.judgement.kind.name == verdicts::kReadAndTested;
  });
  if (across != all.end()) {
    return "Edges that were read are judged by their readings, edges that were tested by the test. "
           "The last answers set the two against each other: they rest on the statement of what "
           "failing the test means as a reading, which nothing here checks.";
  }
  const auto is_tested = [](const Judged& judged) { return judged.judgement.test.has_value(); };
  if (std::ranges::none_of(all, is_tested) || std::ranges::all_of(all, is_tested)) return {};
  return "How fast a reading changes and how long a test is passed are two questions: nothing here "
         "sets the answer to one against the answer to the other.";
}

void add_pictures_of(Html& html, const Report& report, const Judged& judged) {
  const std::vector<telling::ArmName> names = telling::names_of(judged.judgement);
  const std::vector<telling::ArmGroup> groups = telling::groups_of(judged.judgement);
  for (std::size_t i = 0; i < groups.size(); ++i) {
    const std::vector<Figure> figures = figures_of({.judgement = judged.judgement,
                                                    .names = names,
                                                    .group = groups[i],
                                                    .runs = report.judgements[judged.index].runs,
                                                    .trial = report.trial,
                                                    .judgement_index = judged.index,
                                                    .group_index = i});
    if (figures.empty()) continue;
    html.element(judged.heading, "On " + groups[i].medium_words);
    for (const Figure& figure : figures) add_figure(html, figure);
  }
  if (!judged.told.arms.columns.empty()) {
    html.element(judged.heading, "The edges in numbers");
    add_table(html, judged.told.arms);
    html.element("p", judged.told.arms.columns_explained, {{"class", "quiet"}});
  }
  add_if(html, media_figure(judged.judgement, judged.index));
  add_told(html, judged, "across_media");
  if (has_section(judged, "factors")) {
    add_if(html, factor_figure(judged.judgement, judged.index));
    add_told(html, judged, "factors");
  }
}

}  // namespace

void add_answer(Html& html, const Report& /*report*/, const std::vector<Judged>& all) {
  add_each(html, all, [](Html& own, const Judged& judged) {
    if (telling::is_simulated(judged.judgement)) {
      own.element("p", "Simulated: no edge was cut.", {{"class", "answer"}});
    }
    add_answers(own, judged.told.answers, judged.heading);
    if (!judged.told.details.empty()) {
      own.element("p", judged.told.title + ". " + judged.told.details, {{"class", "quiet"}});
    }
  });
  if (all.size() > 1) html.element("p", telling::kJudgedApart, {{"class", "quiet"}});
  const std::string both = read_and_tested_sentence(all);
  if (!both.empty()) html.element("p", both, {{"class", "quiet"}});
}

void add_pictures(Html& html, const Report& report, const std::vector<Judged>& all) {
  add_each(html, all, [&report](Html& to, const Judged& judged) {
    add_pictures_of(to, report, judged);
  });
}

void add_else(Html& html, const Report& report, const std::vector<Judged>& all) {
  add_each(html, all, [&report](Html& own, const Judged& judged) {
    add_told(own, judged, "what_else");
    add_told(own, judged, "curve_warnings");
    add_if(own, order_figure(report.judgements[judged.index], judged.index));
    add_told(own, judged, "run_by_run");
    add_told(own, judged, "second_opinion");
  });
}

void add_runs(Html& html, const Report& report, const std::vector<Judged>& all) {
  add_each(html, all, [&report](Html& own, const Judged& judged) {
    add_run_list(own, report, judged.index);
    add_struck_list(own, report, judged.index);
    add_told(own, judged, "noticed");
  });
}

void add_limits(Html& html, const Report& /*report*/, const std::vector<Judged>& all) {
  add_each(html, all, [](Html& own, const Judged& judged) {
    add_told(own, judged, "cannot_say");
    add_further_runs(own, judged);
  });
  html.element("p",
               "It holds for what was cut here, in this way, with these edges. Other media, other "
               "angles, other heats of a steel and other hands were not tried unless they are "
               "listed.");
}

void add_done(Html& html, const Report& report, const std::vector<Judged>& all) {
  add_how_done(
      html, report.trial, report.judgements.front().judgement.told_in, !report.planned.empty());
  for (const std::string& sentence : planned_words(report)) {
    html.element("p", sentence, {{"class", "quiet"}});
  }
  add_each(html, all, [](Html& own, const Judged& judged) { add_told(own, judged, "how_read"); });
}

void add_calculated(Html& html, const Report& report, const std::vector<Judged>& all) {
  add_each(html, all, [](Html& own, const Judged& judged) { add_told(own, judged, "fit"); });
  html.own(methods_of(report));
}

void add_data(Html& html, const Report& report, const std::string& csv) {
  html.open("p").text("Every reading, with what was struck out and why, is in this file: ");
  html.element("a",
               "save the readings as a table (CSV)",
               {{"href", csv_address(csv)}, {"download", "readings.csv"}});
  html.text(". To judge it again, to the same verdicts and numbers:").close();
  html.open("p").element("code", report.judged_again_by).close();
  if (!report.not_in_its_table.empty()) {
    html.element("p",
                 "A table has no place for " + telling::listed(report.not_in_its_table) +
                     ": that is not in the file.");
  }
  html.open("p").text("The whole answer lies in this page as JSON too, in the element ");
  html.element("code", "report-data").text(".").close();
}

}  // namespace keenfall::page
