#include "workbench/bench_book.h"

#include "base/plain_number.h"
#include "bench/as_run.h"
#include "notebook/bench_runs.h"
#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "planning/plan_flaws.h"
#include "workbench/bench_lines.h"
#include "workbench/cautions.h"
#include "workbench/trials_at_hand.h"

#include <algorithm>
#include <iterator>
#include <span>
#include <utility>

namespace keenfall::workbench {

namespace {

using Told = base::Result<wire::BenchRunTold>;

constexpr double kMmPerMetre = 1000;

base::Problem no_such_run(const std::string& uid) {
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "The notebook has no such run at the bench.",
          .place = {.column = "run", .found = uid},
          .accepted = "a run that was begun in this notebook"};
}

base::Problem not_sealed(const std::string& trial) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "The plan of " + trial +
                      " is not sealed: a run is cut to a plan that does not change any more.",
          .accepted = "sealing question and plan first"};
}

// By which the entry that put a run into its trial is known again.
std::string begins_client_id(const std::string& run_uid) { return "bench " + run_uid + " "; }

// The trial's newest of them that holds; and how many there were.
struct PutIn {
  std::optional<notebook::JournalEntry> holds;
  std::size_t times = 0;
};

PutIn put_in(const notebook::Notebook& opened, const std::string& run_uid) {
  PutIn found;
  for (notebook::JournalEntry& entry : opened.journal()) {
    if (!entry.client_id.starts_with(begins_client_id(run_uid))) continue;
    ++found.times;
    if (!entry.undone_by) found.holds = std::move(entry);
  }
  return found;
}

bool is_over(const bench::Standing& standing) {
  return standing.phase == bench::Phase::closed || standing.phase == bench::Phase::voided;
}

base::Result<bench::RunSheet> sheet_for(const notebook::Notebook& opened,
                                        const TrialAtHand& trial,
                                        const bench::RunToCut& to_cut) {
  if (!trial.asked || !trial.asked->sealed_at_utc) {
    return base::failed(not_sealed(trial.trial->name));
  }
  const trials::Plan& plan = trial.asked->plan;
  const trials::Kit kit = things_of(notebook::kept_kit(opened));
  const trials::ReadingKind* const kind = planning::kind_read(plan, kit);
  if (kind == nullptr) {
    return base::failed(
        {.kind = base::ProblemKind::unreadable,
         .sentence = "Nobody has heard of the kind of reading " + plan.reading.kind + " any more.",
         .accepted = "a kind of the kit"});
  }
  return bench::sheet_of(plan, to_cut, *kind);
}

Told told_of(AtHand& at_hand, const notebook::Notebook& opened, notebook::BenchRun run) {
  const auto trial = at_hand.trials.trial_of(opened, run.trial_uid);
  if (!trial) return base::failed(trial.error());
  auto sheet = sheet_for(opened, **trial, run.to_cut);
  if (!sheet) return base::failed(sheet.error());
  wire::BenchRunTold told{.uid = run.uid,
                          .trial = run.trial_uid,
                          .trial_name = (*trial)->trial->name,
                          .sheet = *std::move(sheet),
                          .entries = std::move(run.entries),
                          .cautions = cautions()};
  told.standing = bench::standing_of(told.sheet, told.entries);
  if (const auto length = told.sheet.run.arm.method.cut_length_mm;
      length && !told.sheet.counted.is_measured) {
    told.metres = told.standing.cuts * *length / kMmPerMetre;
  }
  told.is_in_trial = is_over(told.standing) &&
                     (put_in(opened, run.uid).holds ||
                      has_run_that_reads_as(**trial, bench::as_run(told.sheet, told.entries).run));
  // With each tap: of that block alone.
  const int block = run.to_cut.block;
  const auto runs = notebook::bench_runs_in_block(opened, run.trial_uid, block);
  told.left_in_block = left_in_block(bench_lines(**trial, runs), block);
  return told;
}

Told told_of(AtHand& at_hand, const notebook::Notebook& opened, const std::string& uid) {
  auto run = notebook::bench_run(opened, uid);
  if (!run) return base::failed(no_such_run(uid));
  return told_of(at_hand, opened, *std::move(run));
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

// A run that is over comes into its trial: with the entry that ends it, where it was not put there
// yet, and where that is asked for. An end that arrives once more does not bring back what was
// undone.
void put_where_over(AtHand& at_hand,
                    notebook::Notebook& opened,
                    wire::BenchRunTold& told,
                    const Hand& hand,
                    bool is_asked_for) {
  const bench::Entry* const end = end_of(told.entries);
  if (end == nullptr || told.is_in_trial) return;
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
  const std::string client_id = begins_client_id(told.uid) + end->id + " " + std::to_string(times);
  const auto put = notebook::put_in_trial(opened,
                                          {.name = told.trial_name,
                                           .counted = told.sheet.counted,
                                           .blades = {std::move(blade)},
                                           .series = {std::move(cut.series)},
                                           .runs = {std::move(cut.run)}},
                                          authorship_of_end(hand, client_id));
  told.is_in_trial = put.has_value();
  if (!put) told.why_not_in_trial = put.error().sentence;
}

bool takes_back(const std::vector<bench::Entry>& arriving, const std::string& id) {
  return std::ranges::any_of(arriving, [&id](const bench::Entry& entry) {
    const auto* back = std::get_if<bench::TakenBack>(&entry.what);
    return back != nullptr && back->id == id;
  });
}

// A run that is over is in its trial as it was: what comes before the end is taken back after it.
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

std::optional<base::Problem> problem_of_readings(const bench::RunSheet& sheet,
                                                 const std::vector<bench::Entry>& arriving) {
  for (const bench::Entry& entry : arriving) {
    const auto* taken = std::get_if<bench::ReadingTaken>(&entry.what);
    if (taken == nullptr) continue;
    const bool is_refused_zero =
        taken->reading == 0 && sheet.kind.zero == trials::ZeroReading::refused;
    const bool is_too_large = sheet.kind.largest && taken->reading > *sheet.kind.largest;
    if (!is_refused_zero && !is_too_large) continue;
    const std::string number = base::plain_number(taken->reading);
    return base::Problem{
        .kind = base::ProblemKind::bad_value,
        .sentence = "No " + sheet.kind.words + " is " + number + " " + sheet.unit + ".",
        .place = {.column = "reading", .found = number},
        .accepted = is_too_large ? "at most " + base::plain_number(*sheet.kind.largest)
                                 : "a number above 0"};
  }
  return std::nullopt;
}

// Whoever takes the end back takes the run out of its trial again.
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
  const auto undone = opened.undo(there.holds->entry, authorship_of(hand));
  if (undone) return std::nullopt;
  return undone.error();
}

}  // namespace

base::Result<wire::BenchTold> bench_of(AtHand& at_hand, const TrialMeant& meant) {
  return naming_the_file(meant.notebook, [&]() -> base::Result<wire::BenchTold> {
    const auto opened = opened_to_read(meant.notebook);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    const auto trial = at_hand.trials.trial_of(*opened, meant.uid);
    if (!trial) return base::failed(trial.error());
    wire::BenchTold told{.trial = meant.uid,
                         .name = (*trial)->trial->name,
                         .counted = (*trial)->trial->counted,
                         .cautions = cautions()};
    if (!(*trial)->asked || !(*trial)->asked->sealed_at_utc) {
      told.why_not = not_sealed(told.name).sentence;
      return told;
    }
    told.lines = bench_lines(**trial, notebook::bench_runs_of(*opened, meant.uid));
    told.next = next_of(told.lines);
    if (told.next) {
      told.left_in_block = left_in_block(told.lines, told.lines[*told.next].to_cut.block);
    }
    return told;
  });
}

Told begin_at_bench(AtHand& at_hand,
                    const TrialMeant& meant,
                    const wire::BeginBenchRun& begin,
                    const Hand& hand) {
  return naming_the_file(meant.notebook, [&]() -> Told {
    auto opened = opened_to_write(meant.notebook, hand);
    if (!opened) return base::failed(opened.error());
    const auto trial = at_hand.trials.trial_of(*opened, meant.uid);
    if (!trial) return base::failed(trial.error());
    if (!(*trial)->asked || !(*trial)->asked->sealed_at_utc) {
      return base::failed(not_sealed((*trial)->trial->name));
    }
    const auto runs = notebook::bench_runs_of(*opened, meant.uid);
    const auto lines = bench_lines(**trial, runs);
    if (const auto begun = notebook::bench_run(*opened, begin.uid)) {
      const bool is_meant = begun->trial_uid == meant.uid && begin.line < lines.size() &&
                            lines[begin.line].run == begin.uid;
      if (is_meant) return told_of(at_hand, *opened, *begun);
      return base::failed({.kind = base::ProblemKind::conflicting,
                           .sentence = "A run with this id was begun, and it is another.",
                           .place = {.column = "uid"},
                           .accepted = "a new id for each run"});
    }
    if (begin.line >= lines.size() || lines[begin.line].to_cut.order != begin.order) {
      return base::failed({.kind = base::ProblemKind::conflicting,
                           .sentence = "The plan has another run there.",
                           .place = {.column = "line"},
                           .accepted = "a run that the bench shows now"});
    }
    const wire::BenchLine& line = lines[begin.line];
    if (line.state == wire::BenchRunState::under_way) {
      return base::failed({.kind = base::ProblemKind::conflicting,
                           .sentence = "This run was begun already.",
                           .place = {.column = "line"},
                           .accepted = "going on with it"});
    }
    notebook::BenchRun run{.uid = begin.uid,
                           .trial_uid = meant.uid,
                           .to_cut = line.to_cut,
                           .begun_at_utc = hand.at_utc,
                           .who = hand.who,
                           .entries = {}};
    // Cut already, and cut once more: beyond the plan.
    if (line.state == wire::BenchRunState::cut) run.to_cut.order.reset();
    run.to_cut.name = free_name(std::to_string(run.to_cut.block), **trial, run.to_cut, runs);
    const auto sheet = sheet_for(*opened, **trial, run.to_cut);
    if (!sheet) return base::failed(sheet.error());
    if (auto problem = notebook::begin_bench_run(*opened, run)) {
      return base::failed(*std::move(problem));
    }
    return told_of(at_hand, *opened, std::move(run));
  });
}

Told run_at_bench(AtHand& at_hand, const BenchRunMeant& run) {
  return naming_the_file(run.notebook, [&]() -> Told {
    const auto opened = opened_to_read(run.notebook);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    return told_of(at_hand, *opened, run.uid);
  });
}

// What waits for one notebook, written by whoever came first. Where the machine fails, those that
// were not answered wait on and try for themselves.
class BenchBook::Turn {
 public:
  // The book is locked while it is made, and is not while it writes and goes.
  Turn(BenchBook& book, const Waiting& own) : book_(book), own_(own) {
    const std::string& notebook = own.tapped.run.notebook;
    const auto first = std::stable_partition(
        book_.waiting_.begin(), book_.waiting_.end(), [&](const Waiting* one) {
          return one->tapped.run.notebook != notebook;
        });
    together_.assign(first, book_.waiting_.end());
    book_.waiting_.erase(first, book_.waiting_.end());
    book_.is_writing_ = true;
  }
  Turn(const Turn&) = delete;
  Turn& operator=(const Turn&) = delete;
  Turn(Turn&&) = delete;
  Turn& operator=(Turn&&) = delete;
  ~Turn() {
    const std::scoped_lock lock(book_.mutex_);
    std::ranges::copy_if(together_, std::back_inserter(book_.waiting_), [this](const Waiting* one) {
      return one != &own_ && !one->answer;
    });
    book_.is_writing_ = false;
    book_.written_.notify_all();
  }

  void write(AtHand& at_hand, const std::string& path, const Hand& hand) {
    auto opened = opened_to_write(path, hand);
    if (!opened) {
      for (Waiting* one : together_) one->answer = base::failed(opened.error());
      return;
    }
    std::vector<notebook::ArrivedEntries> arrived;
    std::vector<Waiting*> accepted;
    for (Waiting* one : together_) {
      if (auto problem = problem_of(at_hand, *opened, one->tapped, hand)) {
        one->answer = base::failed(*std::move(problem));
        continue;
      }
      arrived.push_back({.run_uid = one->tapped.run.uid, .entries = one->tapped.entries});
      accepted.push_back(one);
    }
    std::vector<bool> asked_for;
    for (const notebook::ArrivedEntries& entries : arrived) {
      asked_for.push_back(entries.entries.empty() || brings_an_end(*opened, entries));
    }
    const auto problems = notebook::keep_entries(*opened, arrived);
    for (std::size_t i = 0; i < accepted.size(); ++i) {
      if (problems[i]) {
        accepted[i]->answer = Told(base::failed(*problems[i]));
        continue;
      }
      Told told = told_of(at_hand, *opened, arrived[i].run_uid);
      if (told) put_where_over(at_hand, *opened, *told, hand, asked_for[i]);
      accepted[i]->answer = std::move(told);
    }
  }

 private:
  // What is wrong with it, before anything is done for it.
  static std::optional<base::Problem> problem_of(AtHand& at_hand,
                                                 notebook::Notebook& opened,
                                                 const Tapped& tapped,
                                                 const Hand& hand) {
    const auto run = notebook::bench_run(opened, tapped.run.uid);
    if (!run) return no_such_run(tapped.run.uid);
    const auto trial = at_hand.trials.trial_of(opened, run->trial_uid);
    if (!trial) return trial.error();
    const auto sheet = sheet_for(opened, **trial, run->to_cut);
    if (!sheet) return sheet.error();
    if (auto problem = problem_of_readings(*sheet, tapped.entries)) return problem;
    if (auto problem =
            notebook::problem_of(opened, {.run_uid = run->uid, .entries = tapped.entries})) {
      return problem;
    }
    if (auto problem = problem_after_the_end(*run, tapped.entries)) return problem;
    return take_out_where_end_is_taken_back(opened, *run, tapped.entries, hand);
  }

  // One that is not kept yet.
  static bool brings_an_end(const notebook::Notebook& opened,
                            const notebook::ArrivedEntries& arrived) {
    const auto run = notebook::bench_run(opened, arrived.run_uid);
    return run && std::ranges::any_of(arrived.entries, [&](const bench::Entry& entry) {
             return ends(entry) &&
                    std::ranges::count(run->entries, entry.id, &bench::Entry::id) == 0;
           });
  }

  BenchBook& book_;
  const Waiting& own_;
  std::vector<Waiting*> together_;
};

Told BenchBook::keep(AtHand& at_hand, Tapped tapped, const Hand& hand) {
  Waiting own{.tapped = std::move(tapped), .answer = {}};
  const std::string path = own.tapped.run.notebook;
  std::unique_lock lock(mutex_);
  waiting_.push_back(&own);
  written_.wait(lock, [&] { return !is_writing_; });
  if (!own.answer) {
    Turn turn(*this, own);
    lock.unlock();
    naming_the_file(path, [&] {
      turn.write(at_hand, path, hand);
      return true;
    });
  }
  return *std::move(own.answer);
}

}  // namespace keenfall::workbench
