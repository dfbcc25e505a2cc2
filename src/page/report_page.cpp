#include "page/report_page.h"

#include "page/data_address.h"
#include "page/embedded.h"
#include "page/figure.h"
#include "page/figures_of_all.h"
#include "page/figures_of_medium.h"
#include "page/how_done.h"
#include "page/html.h"
#include "page/run_list.h"
#include "page/told_html.h"
#include "telling/answer_sentences.h"
#include "telling/arm_groups.h"
#include "telling/listed.h"
#include "telling/told.h"
#include "wire/report_json.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace keenfall::page {

namespace {

using telling::Report;
using telling::Told;
using verdicts::Judgement;

// A part of the page: its heading, and the anchor by which the list at the top leads to it.
struct Part {
  std::string_view anchor;
  std::string_view heading;
};

constexpr Part kAnswer{"answer", "The answer"};
constexpr Part kPictures{"pictures", "What the readings show"};
constexpr Part kElse{"else", "What else could explain it"};
constexpr Part kRuns{"runs", "Every run"};
constexpr Part kLimits{"limits", "What this cannot say"};
constexpr Part kDone{"done", "How it was done"};
constexpr Part kCalculated{"calculated", "How it was calculated"};
constexpr Part kData{"data", "The data"};
constexpr Part kParts[] = {kAnswer, kPictures, kElse, kRuns, kLimits, kDone, kCalculated, kData};

void begin(Html& html, const Part& part) {
  html.open("section", {{"id", part.anchor}}).element("h2", part.heading);
}

// Nothing runs but the script that is part of the page, and nothing is fetched.
std::string content_policy() {
  return fmt::format(
      "default-src 'none'; script-src 'sha256-{}'; style-src 'unsafe-inline'; img-src data:; "
      "base-uri 'none'; form-action 'none'",
      report_script_sha256());
}

void add_head(Html& html, const Report& report) {
  html.open("head").lone("meta", {{"charset", "utf-8"}});
  html.lone("meta", {{"http-equiv", "Content-Security-Policy"}, {"content", content_policy()}});
  html.lone("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  html.lone("meta", {{"name", "generator"}, {"content", "Keenfall " + report.program_version}});
  html.element("title", report.title + ": which stays keen longest");
  html.open("style").own(report_style()).close().close();
}

void add_title(Html& html, const Report& report) {
  html.open("header").element("h1", report.title);
  html.element("p",
               fmt::format("A report written on {} with Keenfall {} from {}.",
                           report.written_on,
                           report.program_version,
                           telling::listed(report.from)),
               {{"class", "quiet"}});
  html.open("nav", {{"aria-label", "Parts of this report"}}).open("ol");
  for (const Part& part : kParts) {
    html.open("li").element("a", part.heading, {{"href", "#" + std::string(part.anchor)}}).close();
  }
  html.close().close().close();
}

// The section with this name, where the judgement has one.
void add_told(Html& html, const Told& told, std::string_view id) {
  const auto section = std::ranges::find(told.sections, id, &telling::Section::id);
  if (section != told.sections.end()) add_section(html, *section);
}

bool has_section(const Told& told, std::string_view id) {
  return std::ranges::count(told.sections, id, &telling::Section::id) > 0;
}

void add_if(Html& html, const std::optional<Figure>& figure) {
  if (figure) add_figure(html, *figure);
}

// Where there are several kinds of reading, whose this is.
void add_kind(Html& html, const Report& report, const Told& told) {
  if (report.judgements.size() > 1) html.element("p", told.title, {{"class", "kind"}});
}

struct Judged {
  const Judgement& judgement;
  std::size_t index = 0;
  Told told;
};

void add_answer(Html& html, const Report& report, const std::vector<Judged>& all) {
  begin(html, kAnswer);
  for (const Judged& judged : all) {
    add_kind(html, report, judged.told);
    add_answers(html, judged.told.answers);
    if (!judged.told.details.empty()) {
      html.element("p", judged.told.title + ". " + judged.told.details, {{"class", "quiet"}});
    }
  }
  if (all.size() > 1) html.element("p", telling::kJudgedApart, {{"class", "quiet"}});
  html.close();
}

void add_pictures(Html& html, const Report& report, const std::vector<Judged>& all) {
  begin(html, kPictures);
  for (const Judged& judged : all) {
    add_kind(html, report, judged.told);
    const std::vector<telling::ArmName> names = telling::names_of(judged.judgement);
    const std::vector<telling::ArmGroup> groups = telling::groups_of(judged.judgement);
    for (std::size_t i = 0; i < groups.size(); ++i) {
      html.element("h3", "On " + groups[i].medium_words);
      for (const Figure& figure : figures_of({.judgement = judged.judgement,
                                  .names = names,
                                  .group = groups[i],
                                  .judgement_index = judged.index,
                                  .group_index = i})) {
        add_figure(html, figure);
      }
    }
    if (!judged.told.arms.columns.empty()) {
      html.element("h3", "The edges in numbers");
      add_table(html, judged.told.arms);
      html.element("p", judged.told.arms.columns_explained, {{"class", "quiet"}});
    }
    add_if(html, media_figure(judged.judgement, judged.index));
    add_told(html, judged.told, "across_media");
    if (has_section(judged.told, "factors")) {
      add_if(html, factor_figure(judged.judgement, judged.index));
      add_told(html, judged.told, "factors");
    }
  }
  html.close();
}

void add_else(Html& html, const Report& report, const std::vector<Judged>& all) {
  begin(html, kElse);
  for (const Judged& judged : all) {
    add_kind(html, report, judged.told);
    add_told(html, judged.told, "what_else");
    add_told(html, judged.told, "curve_warnings");
    add_if(html, order_figure(report.judgements[judged.index], judged.index));
    add_told(html, judged.told, "run_by_run");
    add_told(html, judged.told, "second_opinion");
  }
  html.close();
}

void add_runs(Html& html, const Report& report, const std::vector<Judged>& all) {
  begin(html, kRuns);
  for (const Judged& judged : all) {
    add_kind(html, report, judged.told);
    add_run_list(html, judged.judgement, judged.index);
    add_told(html, judged.told, "noticed");
  }
  html.close();
}

// What would settle each comparison that is not settled.
void add_further_runs(Html& html, const Judgement& judgement) {
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  bool begun = false;
  for (const telling::ArmGroup& group : telling::groups_of(judgement)) {
    for (const std::size_t index : group.comparisons) {
      const verdicts::Comparison& pair = judgement.comparisons[index];
      if (!pair.further_runs) continue;
      if (!begun) html.element("h3", "What would settle it").open("ul");
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

void add_limits(Html& html, const Report& report, const std::vector<Judged>& all) {
  begin(html, kLimits);
  for (const Judged& judged : all) {
    add_kind(html, report, judged.told);
    add_told(html, judged.told, "cannot_say");
    add_further_runs(html, judged.judgement);
  }
  html.element("p",
               "It holds for what was cut here, in this way, with these edges. Other media, other "
               "angles, other heats of a steel and other hands were not tried unless they are "
               "listed.");
  html.close();
}

void add_done(Html& html, const Report& report, const std::vector<Judged>& all) {
  begin(html, kDone);
  add_how_done(html, report.trial);
  html.element("p",
               "No plan or claim that was fixed before the first cut is recorded with this trial.",
               {{"class", "quiet"}});
  for (const Judged& judged : all) add_told(html, judged.told, "how_read");
  html.close();
}

void add_calculated(Html& html, const Report& report, const std::vector<Judged>& all) {
  begin(html, kCalculated);
  for (const Judged& judged : all) {
    add_kind(html, report, judged.told);
    add_told(html, judged.told, "fit");
  }
  html.own(report_methods()).close();
}

void add_data(Html& html, const Report& report, const std::string& csv) {
  begin(html, kData);
  html.open("p").text("Every reading, with what was struck out and why, is in this file: ");
  html.element("a",
               "save the readings as a table (CSV)",
               {{"href", csv_address(csv)}, {"download", "readings.csv"}});
  html.text(". To judge them again: ");
  html.element("code",
               fmt::format("keenfall judge readings.csv --seed={}",
                           report.judgements.front().judgement.fit.seed));
  html.text(". The whole answer lies in this page as JSON too, in the element ");
  html.element("code", "report-data").text(".").close().close();
}

void add_care(Html& html) {
  html.open("footer").element(
      "p",
      "Cutting trials can hurt. Cut away from yourself and the holding hand, clamp the stock, wear "
      "a "
      "cut-resistant glove on the holding hand, let a dropped knife fall, and keep guards on "
      "between "
      "stations. A blunt edge slips: set a cap on the force beside the level to stop at. Stay out "
      "of "
      "the recoil of rope and cord. Gloves off at wheels and belts; grind wet or with extraction. "
      "Used floor coverings may hold asbestos, sharps or mould: do not cut them until they have "
      "been "
      "assessed. Local law, the employer's risk assessment and the makers' instructions come "
      "first. "
      "Keenfall certifies neither blades nor workplaces as safe.",
      {{"class", "care"}});
  html.close();
}

}  // namespace

std::string report_page(const Report& report, const std::string& csv) {
  std::vector<Judged> all;
  for (std::size_t i = 0; i < report.judgements.size(); ++i) {
    const Judgement& judgement = report.judgements[i].judgement;
    all.push_back({.judgement = judgement, .index = i, .told = telling::told(judgement)});
  }
  Html html;
  html.own("<!doctype html>\n").open("html", {{"lang", "en"}});
  add_head(html, report);
  html.open("body");
  add_title(html, report);
  html.open("main");
  add_answer(html, report, all);
  add_pictures(html, report, all);
  add_else(html, report, all);
  add_runs(html, report, all);
  add_limits(html, report, all);
  add_done(html, report, all);
  add_calculated(html, report, all);
  add_data(html, report, csv);
  html.close();
  add_care(html);
  html.open("script", {{"type", "application/json"}, {"id", "report-data"}})
      .own(wire::report_to_json_in_page(report))
      .close();
  html.open("script").own(report_script()).close();
  html.close().close();
  return std::move(html).taken() + "\n";
}

}  // namespace keenfall::page
