#include "page/how_done.h"

#include "page/figure.h"
#include "telling/listed.h"

#include <fmt/format.h>
#include <algorithm>
#include <functional>
#include <string>
#include <vector>

namespace keenfall::page {

namespace {

using trials::Run;
using trials::Trial;

void add_once(std::vector<std::string>& list, const std::string& words) {
  if (!words.empty() && std::ranges::count(list, words) == 0) list.push_back(words);
}

// What the runs have for one fact, each value once; "not recorded" where none has.
std::string all_of(const Trial& trial, const std::function<std::string(const Run&)>& fact) {
  std::vector<std::string> values;
  for (const Run& run : trial.runs) add_once(values, fact(run));
  return values.empty() ? "not recorded" : telling::listed(values);
}

std::string edges_of(const Trial& trial, const std::string& blade, const materials::ToldIn& told) {
  std::vector<std::string> edges;
  for (const Run& run : trial.runs) {
    if (run.arm.blade == blade) add_once(edges, in_words(run.arm.edge, told));
  }
  return edges.empty() ? "not recorded" : telling::listed(edges);
}

telling::Table blade_table(const Trial& trial, const materials::ToldIn& told) {
  telling::Table table{.caption = "Blades and their edges (angles per side)",
                       .columns = {{.head = "blade", .side = telling::Side::left},
                                   {.head = "steel", .side = telling::Side::left},
                                   {.head = "hardness", .side = telling::Side::left},
                                   {.head = "pieces"},
                                   {.head = "edge", .side = telling::Side::left}}};
  for (const trials::Blade& blade : trial.blades) {
    table.rows.push_back(
        {.cells = {blade.name,
                   blade.steel.empty() ? "not recorded" : blade.steel,
                   blade.hardness ? in_words(*blade.hardness) : "not recorded",
                   std::to_string(std::max<std::size_t>(1, blade.specimens.size())),
                   edges_of(trial, blade.name, told)}});
  }
  return table;
}

std::string medium_words(const Run& run) {
  std::string words = run.arm.medium.name;
  if (!run.arm.medium.condition.empty()) words += ", " + run.arm.medium.condition;
  if (!run.medium_lot.empty()) words += " (" + run.medium_lot + ")";
  return words;
}

std::string readings_words(const Trial& trial, const materials::ToldIn& told) {
  std::vector<std::string> kinds;
  for (const trials::ReadingSeries& series : trial.series) {
    const std::string unit = told_unit(series.unit, told);
    std::string words = series.kind.words + " in " + series.unit;
    if (unit != series.unit) words += ", told in " + unit;
    if (!series.thread.empty()) words += ", thread " + series.thread;
    if (!series.thread_lot.empty()) words += " (" + series.thread_lot + ")";
    add_once(kinds, words);
  }
  return kinds.empty() ? "none" : telling::listed(kinds);
}

void add_fact(Html& html, const std::string& what, const std::string& words) {
  html.open("li").element("b", what + ":").text(" " + words).close();
}

std::string dates_words(const Trial& trial) {
  std::string first;
  std::string last;
  for (const Run& run : trial.runs) {
    if (run.date.empty()) continue;
    if (first.empty() || run.date < first) first = run.date;
    if (last.empty() || run.date > last) last = run.date;
  }
  if (first.empty()) return "not recorded";
  return first == last ? first : first + " to " + last;
}

}  // namespace

void add_how_done(Html& html, const Trial& trial, const materials::ToldIn& told, bool is_planned) {
  add_table(html, blade_table(trial, told));
  html.open("ul");
  add_fact(html, "Medium", all_of(trial, medium_words));
  add_fact(html, "Cut", all_of(trial, [&told](const Run& run) {
             return in_words(run.arm.method, told);
           }));
  add_fact(html, "Readings", readings_words(trial, told));
  add_fact(html, "Who cut", all_of(trial, [](const Run& run) { return run.operator_name; }));
  add_fact(html, "When", dates_words(trial));
  const bool departed =
      std::ranges::any_of(trial.runs, [](const Run& run) { return !run.deviations.empty(); });
  if (departed || !is_planned) {
    add_fact(html, "Departures from the plan", all_of(trial, [](const Run& run) {
               return telling::listed(run.deviations);
             }));
  }
  html.close();
}

}  // namespace keenfall::page
