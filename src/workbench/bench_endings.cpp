#include "workbench/bench_endings.h"

#include "bench/as_run.h"
#include "bench/standing.h"
#include "notebook/run_out.h"
#include "workbench/bench_lines.h"
#include "workbench/bench_put_in.h"

#include <algorithm>
#include <string>
#include <utility>
#include <variant>

namespace keenfall::workbench {

namespace {

bool is_over(const bench::Standing& standing) {
  return standing.phase == bench::Phase::closed || standing.phase == bench::Phase::voided;
}

bool ends(const bench::Entry& entry) {
  return std::holds_alternative<bench::Closed>(entry.what) ||
         std::holds_alternative<bench::Voided>(entry.what);
}

// The entry that ended the run and still stands.
const bench::Entry* end_of(const std::vector<bench::Entry>& entries) {
  for (const std::size_t index : bench::entries_that_stand(entries)) {
    const bench::Entry& entry = entries[index];
    if (ends(entry)) return &entry;
  }
  return nullptr;
}

notebook::Authorship authorship_of_end(const Hand& hand, std::string client_id) {
  notebook::Authorship by = authorship_of(hand);
  by.client_id = std::move(client_id);
  return by;
}

// As it was begun, unless a run of that name has come into the trial meanwhile, from a table say.
std::string name_in_trial(AtHand& at_hand,
                          const notebook::Notebook& opened,
                          const notebook::BenchRun& run) {
  const auto trial = at_hand.trials.trial_of(opened, run.trial_uid);
  if (!trial || !has_run_called(**trial, run.to_cut)) return run.to_cut.name;
  return free_name(
      run.to_cut.name, **trial, run.to_cut, notebook::bench_runs_of(opened, run.trial_uid));
}

bool takes_back(const std::vector<bench::Entry>& arriving, const std::string& id) {
  return std::ranges::any_of(arriving, [&id](const bench::Entry& entry) {
    const auto* back = std::get_if<bench::TakenBack>(&entry.what);
    return back != nullptr && back->id == id;
  });
}

}  // namespace

bool is_in_trial(const notebook::Notebook& opened,
                 const TrialAtHand& trial,
                 const wire::BenchRunTold& run) {
  return is_over(run.standing) &&
         (put_in(opened, run.uid).holds ||
          has_run_that_reads_as(trial, bench::as_run(run.sheet, run.entries).run));
}

void put_where_over(AtHand& at_hand,
                    notebook::Notebook& opened,
                    wire::BenchRunTold& told,
                    const Hand& hand,
                    bool is_asked_for) {
  const bench::Entry* const end = end_of(told.entries);
  if (end == nullptr || told.is_in_trial) return;
  if (told.standing.phase == bench::Phase::closed && told.standing.readings.empty()) {
    told.why_not_in_trial = "nothing was read in it. It stays to be cut.";
    return;
  }
  const std::size_t times = put_in(opened, told.uid).times;
  if (times > 0 && !is_asked_for) return;
  const auto run = notebook::bench_run(opened, told.uid);
  if (!run) return;
  bench::CutRun cut = bench::as_run(told.sheet, told.entries);
  cut.run.name = name_in_trial(at_hand, opened, *run);
  cut.run.operator_name = run->who;
  cut.run.date = run->begun_at_utc.substr(0, std::string("2026-11-28").size());
  trials::Blade blade{.name = cut.run.arm.blade};
  if (!cut.run.specimen.empty()) blade.specimens.push_back({.name = cut.run.specimen});
  const std::string client_id = put_in_client_id(told.uid) + end->id + " " + std::to_string(times);
  const auto put = notebook::put_in_trial(opened,
                                          {.name = told.trial_name,
                                           .counted = told.sheet.counted,
                                           .blades = {std::move(blade)},
                                           .series = std::move(cut.series),
                                           .runs = {std::move(cut.run)}},
                                          authorship_of_end(hand, client_id));
  told.is_in_trial = put.has_value();
  if (!put) told.why_not_in_trial = put.error().sentence;
}

bool brings_an_end(const notebook::BenchRun& run, const std::vector<bench::Entry>& arriving) {
  return std::ranges::any_of(arriving, [&run](const bench::Entry& entry) {
    return ends(entry) && std::ranges::count(run.entries, entry.id, &bench::Entry::id) == 0;
  });
}

std::optional<base::Problem> problem_after_the_end(const notebook::BenchRun& run,
                                                   const std::vector<bench::Entry>& arriving) {
  const bench::Entry* const end = end_of(run.entries);
  if (end == nullptr || takes_back(arriving, end->id)) return std::nullopt;
  for (const bench::Entry& kept : run.entries) {
    if (&kept == end) break;
    if (!takes_back(arriving, kept.id)) continue;
    return base::Problem{.kind = base::ProblemKind::conflicting,
                         .sentence = "The run is over.",
                         .accepted = "taking its end back first"};
  }
  return std::nullopt;
}

std::optional<base::Problem> take_out_where_end_is_taken_back(
    notebook::Notebook& opened,
    const notebook::BenchRun& run,
    const std::vector<bench::Entry>& arriving,
    const Hand& hand) {
  const bench::Entry* const end = end_of(run.entries);
  if (end == nullptr || !takes_back(arriving, end->id)) return std::nullopt;
  // One that was not put in, or came with another notebook, has no entry to undo.
  const PutIn there = put_in(opened, run.uid);
  if (!there.holds) return std::nullopt;
  if (opened.undo(there.holds->entry, authorship_of(hand))) return std::nullopt;
  // Others came into the trial after it: it goes from among them.
  notebook::Authorship by = authorship_of(hand);
  by.client_id.insert(0, take_out_client_id(run.uid));
  const auto out = notebook::take_run_out(opened, there.holds->entry, by);
  if (out) return std::nullopt;
  return out.error();
}

}  // namespace keenfall::workbench
