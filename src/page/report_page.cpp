#include "page/report_page.h"

#include "page/embedded.h"
#include "page/html.h"
#include "page/judged.h"
#include "page/report_parts.h"
#include "telling/listed.h"
#include "wire/report_json.h"

#include <fmt/format.h>
#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace keenfall::page {

namespace {

using telling::Report;

// A part of the page: its heading, and the anchor by which the list at the top leads to it.
struct Part {
  std::string_view anchor;
  std::string_view heading;
  std::string content;  // HTML; empty: the part is left out
};

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

void add_title(Html& html, const Report& report, const std::vector<Part>& parts) {
  html.open("header").element("h1", report.title);
  html.element("p",
               fmt::format("A report written on {} with Keenfall {} from {}.",
                           report.written_on,
                           report.program_version,
                           telling::listed(report.from)),
               {{"class", "quiet"}});
  html.open("nav", {{"aria-label", "Parts of this report"}}).open("ol");
  for (const Part& part : parts) {
    html.open("li").element("a", part.heading, {{"href", "#" + std::string(part.anchor)}}).close();
  }
  html.close().close().close();
}

// Those that have something to say.
std::vector<Part> parts_of(const Report& report, const std::string& csv) {
  const std::vector<Judged> all = judged_of(report);
  std::vector<Part> parts;
  const auto add = [&](std::string_view anchor,
                       std::string_view heading,
                       const std::function<void(Html&)>& fill) {
    Html content;
    fill(content);
    Part part{.anchor = anchor, .heading = heading, .content = std::move(content).taken()};
    if (!part.content.empty()) parts.push_back(std::move(part));
  };
  add("answer", "The answer", [&](Html& html) { add_answer(html, report, all); });
  add("pictures", "What the readings show", [&](Html& html) { add_pictures(html, report, all); });
  add("else", "What else could explain it", [&](Html& html) { add_else(html, report, all); });
  add("runs", "Every run", [&](Html& html) { add_runs(html, report, all); });
  add("limits", "What this cannot say", [&](Html& html) { add_limits(html, report, all); });
  add("done", "How it was done", [&](Html& html) { add_done(html, report, all); });
  add("calculated", "How it was calculated", [&](Html& html) {
    add_calculated(html, report, all);
  });
  add("data", "The data", [&](Html& html) { add_data(html, report, csv); });
  return parts;
}

void add_care(Html& html) {
  html.open("footer").element(
      "p",
      "Cutting trials can hurt. Cut away from yourself and the holding hand, clamp the stock, wear "
      "a cut-resistant glove on the holding hand, let a dropped knife fall, and keep guards on "
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
  const std::vector<Part> parts = parts_of(report, csv);
  Html html;
  html.own("<!doctype html>\n").open("html", {{"lang", "en"}});
  add_head(html, report);
  html.open("body");
  add_title(html, report, parts);
  html.open("main");
  for (const Part& part : parts) {
    html.open("section", {{"id", part.anchor}}).element("h2", part.heading);
    html.own(part.content).close();
  }
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
