#include "workbench/bench_book.h"

#include "base/plain_number.h"
#include "bench/typed_reading.h"
#include "notebook/bench_runs.h"
#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "planning/plan_flaws.h"
#include "workbench/bench_endings.h"
#include "workbench/bench_lines.h"
#include "workbench/cautions.h"
#include "workbench/trials_at_hand.h"

#include <algorithm>
#include <iterator>
#include <memory>
#include <span>
#include <utility>

namespace keenfall::workbench {

namespace {

using Told = base::Result<wire::BenchRunTold>;

constexpr double kMmPerMetre = 1000;

base::Problem not_sealed(const std::string& trial) {
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "The plan of " + trial +
                      " is not sealed: a run is cut to a plan that does not change any more.",
          .accepted = "sealing question and plan first"};
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

// The trial of a run at the bench. Where that was undone it is the run that is not found.
base::Result<std::shared_ptr<const TrialAtHand>> trial_of_run(AtHand& at_hand,
                                                              const notebook::Notebook& opened,
                                                              const notebook::BenchRun& run) {
  auto trial = at_hand.trials.trial_of(opened, run.trial_uid);
  const bool is_gone = !trial && trial.error().kind == base::ProblemKind::unknown_name;
  if (!is_gone) return trial;
  return base::failed(
      {.kind = base::ProblemKind::unknown_name,
       .sentence = "The trial of this run is not in the notebook any more: it was undone.",
       .place = {.column = "run", .found = run.uid},
       .accepted = "a run of a trial that the first page lists; undoing can be undone in the "
                   "journal"});
}

Told told_of(AtHand& at_hand, const notebook::Notebook& opened, notebook::BenchRun run) {
  const auto trial = trial_of_run(at_hand, opened, run);
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
  told.is_in_trial = is_in_trial(opened, **trial, told);
  // With each tap: of that block alone.
  const int block = run.to_cut.block;
  const auto runs = notebook::bench_runs_in_block(opened, run.trial_uid, block);
  told.left_in_block = left_in_block(bench_lines(opened, **trial, runs), block);
  return told;
}

Told told_of(AtHand& at_hand, const notebook::Notebook& opened, const std::string& uid) {
  auto run = notebook::bench_run(opened, uid);
  if (!run) return base::failed(notebook::no_such_bench_run(uid));
  return told_of(at_hand, opened, *std::move(run));
}

std::optional<base::Problem> problem_of_readings(const bench::RunSheet& sheet,
                                                 const std::vector<bench::Entry>& arriving) {
  for (const bench::Entry& entry : arriving) {
    const auto* taken = std::get_if<bench::ReadingTaken>(&entry.what);
    if (taken == nullptr) continue;
    const std::string& unit = bench::unit_of(sheet, *taken);
    if (!bench::is_unit_for(sheet, unit)) {
      return base::Problem{.kind = base::ProblemKind::bad_value,
                           .sentence = "A " + sheet.kind.words + " reading in " + unit +
                                       " cannot be brought into " + sheet.unit + ".",
                           .place = {.column = "unit", .found = unit},
                           .accepted = "a unit that converts to " + sheet.unit};
    }
    if (auto problem = trials::problem_of_reading(sheet.kind, taken->reading, unit)) {
      problem->place = {.column = "reading", .found = base::plain_number(taken->reading)};
      return problem;
    }
  }
  return std::nullopt;
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
    told.lines = bench_lines(*opened, **trial, notebook::bench_runs_of(*opened, meant.uid));
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
    const auto lines = bench_lines(*opened, **trial, runs);
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

base::Result<bool> is_worth_a_second_look(AtHand& at_hand,
                                          const BenchRunMeant& meant,
                                          const wire::TypedReading& typed) {
  return naming_the_file(meant.notebook, [&]() -> base::Result<bool> {
    const auto opened = opened_to_read(meant.notebook);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    const auto run = notebook::bench_run(*opened, meant.uid);
    if (!run) return base::failed(notebook::no_such_bench_run(meant.uid));
    const auto trial = trial_of_run(at_hand, *opened, *run);
    if (!trial) return base::failed(trial.error());
    const auto sheet = sheet_for(*opened, **trial, run->to_cut);
    if (!sheet) return base::failed(sheet.error());
    const bench::Standing standing = bench::standing_of(*sheet, run->entries);
    const double reading =
        bench::in_unit_of(*sheet, {.reading = typed.reading, .unit = typed.unit});
    return standing.cuts == typed.at_cuts && bench::surprises(standing.usual, reading);
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
    for (Waiting* one : together_) one->is_answered = one->answer.has_value();
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
    std::vector<Accepted> accepted;
    for (Waiting* one : together_) {
      const auto& [meant, entries] = one->tapped;
      const auto run = notebook::bench_run(*opened, meant.uid);
      std::optional<base::Problem> problem = run ? problem_of(at_hand, *opened, *run, entries)
                                                 : notebook::no_such_bench_run(meant.uid);
      if (!problem) problem = take_out_where_end_is_taken_back(*opened, *run, entries, hand);
      if (problem) {
        one->answer = base::failed(*std::move(problem));
        continue;
      }
      accepted.push_back(
          {.one = one, .is_to_be_put = entries.empty() || brings_an_end(*run, entries)});
      arrived.push_back({.run_uid = run->uid, .entries = entries});
    }
    const auto problems = notebook::keep_entries(*opened, arrived);
    for (std::size_t i = 0; i < accepted.size(); ++i) {
      const auto& [one, is_to_be_put] = accepted[i];
      if (problems[i]) {
        one->answer = base::failed(*problems[i]);
        continue;
      }
      Told told = told_of(at_hand, *opened, arrived[i].run_uid);
      if (told) put_where_over(at_hand, *opened, *told, hand, is_to_be_put);
      one->answer = std::move(told);
    }
  }

 private:
  struct Accepted {
    Waiting* one = nullptr;
    bool is_to_be_put = false;  // into its trial, though it was there and was undone
  };

  // Before anything is done for it.
  static std::optional<base::Problem> problem_of(AtHand& at_hand,
                                                 const notebook::Notebook& opened,
                                                 const notebook::BenchRun& run,
                                                 const std::vector<bench::Entry>& entries) {
    const auto trial = trial_of_run(at_hand, opened, run);
    if (!trial) return trial.error();
    const auto sheet = sheet_for(opened, **trial, run.to_cut);
    if (!sheet) return sheet.error();
    if (auto problem = problem_of_readings(*sheet, entries)) return problem;
    if (auto problem = notebook::problem_of(opened, {.run_uid = run.uid, .entries = entries})) {
      return problem;
    }
    return problem_after_the_end(run, entries);
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
  written_.wait(lock, [&] { return own.is_answered || !is_writing_; });
  if (!own.is_answered) {
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
