#include "workbench/taken_back.h"

#include "notebook/kept_trials.h"
#include "notebook/taken_entries.h"
#include "notebook/typed_sheets.h"
#include "trials/trial.h"
#include "wire/typed_sheet_json.h"
#include "workbench/trial_table.h"

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

namespace keenfall::workbench {

namespace {

using trials::Trial;

base::Problem no_table(const std::string& file) {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "That change brought no table in, or does not hold any more.",
          .place = {.file = file},
          .accepted = "a change that took a table into a trial"};
}

base::Problem sheet_in_the_way(const std::string& file, const std::string& whose) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "The sheet of " + whose +
                      " holds what was typed and not taken in, and would "
                      "be written over. Nothing was taken back.",
          .place = {.file = file},
          .accepted = "an empty sheet there: take it in first, or clear it"};
}

// Of a trial, only these runs and what they need.
Trial with_runs(const Trial& trial, std::vector<trials::Run> runs) {
  Trial part{.name = trial.name, .counted = trial.counted};
  std::map<std::size_t, std::size_t> series;
  for (trials::Run& run : runs) {
    for (trials::Reading& reading : run.readings) {
      const auto [place, is_new] = series.emplace(reading.series, part.series.size());
      if (is_new) part.series.push_back(trial.series.at(reading.series));
      reading.series = place->second;
    }
  }
  for (const trials::Blade& blade : trial.blades) {
    const bool is_cut_with = std::ranges::any_of(
        runs, [&](const trials::Run& run) { return run.arm.blade == blade.name; });
    if (is_cut_with) part.blades.push_back(blade);
  }
  part.runs = std::move(runs);
  return part;
}

// The runs that are there no more, or no more as they were.
Trial what_went(const Trial& before, const base::Result<Trial>& after) {
  std::vector<trials::Run> went;
  for (const trials::Run& run : before.runs) {
    if (!after || std::ranges::count(after->runs, run) == 0) went.push_back(run);
  }
  return with_runs(before, std::move(went));
}

}  // namespace

base::Result<wire::TakenBack> taken_back(const std::string& notebook,
                                         std::int64_t entry,
                                         const Hand& hand) {
  return naming_the_file(notebook, [&]() -> base::Result<wire::TakenBack> {
    auto opened = opened_whole_to_write(notebook, hand, Checked::any_size);
    if (!opened) return base::failed(opened.error());
    const auto into = notebook::taken_into(*opened, entry);
    if (!into) return base::failed(no_table(notebook));
    const std::string sheet_of = into->is_new ? "" : into->uid;
    const auto sheet = notebook::typed_sheet(*opened, sheet_of);
    if (sheet && wire::holds_more_than_labels(sheet->cells)) {
      return base::failed(
          sheet_in_the_way(notebook, into->is_new ? "a new trial" : "the trial " + into->name));
    }
    const Trial before = *notebook::kept_trial(*opened, into->name);
    const auto undone = opened->undo(entry, authorship_of(hand));
    if (!undone) return base::failed(undone.error());
    const Trial went = what_went(before, notebook::kept_trial(*opened, into->name));
    const auto kept = notebook::keep_sheet(*opened,
                                           {.trial_uid = sheet_of,
                                            .revision = sheet ? sheet->revision : 0,
                                            .cells = wire::cells_in_json(trial_cells(went)),
                                            .at_utc = hand.at_utc,
                                            .who = hand.who});
    if (!kept) return base::failed(kept.error());
    return wire::TakenBack{
        .changed = {.entry = undone->entry, .last_entry = undone->entry, .what = undone->what},
        .trial = sheet_of,
        .trial_name = into->name};
  });
}

}  // namespace keenfall::workbench
