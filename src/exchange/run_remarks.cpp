#include "exchange/run_remarks.h"

#include "base/plain_number.h"
#include "exchange/run_drafts.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>
#include <unordered_set>

namespace keenfall::exchange {

namespace {

// Hand tools are rarely blunter than 30 degrees per side, and inclusive angles rarely keener than
// that (common practice, no source).
constexpr double kLikelyInclusiveDeg = 30;

bool has_one_checkpoint(const RunDraft& draft) {
  return !draft.readings.empty() &&
         std::ranges::all_of(draft.readings, [&draft](const ReadingDraft& reading) {
           return reading.reading.cuts == draft.readings.front().reading.cuts;
         });
}

std::string columns_that_differ(const RunDraft& one, const RunDraft& other) {
  std::string list;
  for (const ColumnDefinition& definition : column_definitions()) {
    const ToldCell& said = one[definition.column];
    const ToldCell& said_there = other[definition.column];
    if (said.text == said_there.text && said.number == said_there.number) continue;
    list += (list.empty() ? "" : ", ") + std::string(definition.name);
  }
  return list;
}

}  // namespace

std::vector<std::string> remarks_on_split_runs(std::span<const RunDraft> drafts) {
  std::vector<std::string> remarks;
  std::unordered_map<std::string, const RunDraft*> first_of_name;
  for (const RunDraft& draft : drafts) {
    const std::string& blade = draft[Column::blade].text;
    const std::string& medium = draft[Column::medium].text;
    const std::string& run = draft[Column::run].text;
    const auto [place, is_new] = first_of_name.emplace(blade + '\n' + medium + '\n' + run, &draft);
    if (is_new || has_one_checkpoint(draft) == has_one_checkpoint(*place->second)) continue;
    remarks.push_back(
        "Run " + excerpt(run) + " of blade " + excerpt(blade) + " in " + excerpt(medium) +
        " is taken as two runs, because its rows differ in " +
        columns_that_differ(draft, *place->second) +
        "; one of them has a single checkpoint. If that is a slip, correct the cell.");
  }
  return remarks;
}

std::vector<std::string> remarks_on_names(const trials::Trial& trial) {
  std::vector<std::string> remarks;
  std::map<std::string, std::string> first_spelling;
  const auto look_at = [&](const std::string& what, const std::string& name) {
    const auto [place, is_new] = first_spelling.emplace(what + folded(name), name);
    if (is_new || place->second == name) return;
    remarks.push_back(what + in_quotes(place->second) + " and " + in_quotes(name) +
                      " are taken as two, though they differ only in spelling.");
  };
  for (const trials::Blade& blade : trial.blades) look_at("The blades ", blade.name);
  std::unordered_set<std::string> media;
  for (const trials::Run& run : trial.runs) {
    const std::string& medium = run.arm.medium.name;
    if (media.insert(medium).second) look_at("The media ", medium);
  }
  std::unordered_set<std::string> persons;
  for (const trials::Run& run : trial.runs) {
    const std::string& person = run.operator_name;
    if (!person.empty() && persons.insert(person).second) look_at("The persons ", person);
  }
  return remarks;
}

std::vector<std::string> remarks_on_angles(const trials::Trial& trial) {
  for (const trials::Run& run : trial.runs) {
    const auto& angle = run.arm.edge.bevel_angle;
    if (!angle || angle->deg <= kLikelyInclusiveDeg) continue;
    return {"Blade " + in_quotes(run.arm.blade) + " is given " + base::plain_number(angle->deg) +
            "° per side, which is " + base::plain_number(trials::inclusive(*angle).deg) +
            "° inclusive. If it is the inclusive angle, write half of it."};
  }
  return {};
}

std::vector<std::string> remarks_on_threads(const trials::Trial& trial) {
  std::vector<std::string> remarks;
  std::set<std::string> with_thread;
  std::set<std::string> without_thread;
  for (const trials::ReadingSeries& series : trial.series) {
    (series.thread.empty() ? without_thread : with_thread).insert(series.kind.name);
  }
  for (const std::string& kind : with_thread) {
    if (!without_thread.contains(kind)) continue;
    remarks.push_back("The thread of " + kind +
                      " is named in some runs and not in others: these are kept apart.");
  }
  return remarks;
}

}  // namespace keenfall::exchange
