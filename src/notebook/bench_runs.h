// Runs that are cut at the bench, entry by entry, as they are kept before they are part of a trial.
//
// What was tapped is on the disk before it is acknowledged, is known by its id however often it
// arrives, and is never changed. It is beside the journal: a run comes into its trial, as one entry
// of the journal, when it is over (put_in_trial). How a run stands follows from its entries
// (bench/standing.h). Needs a notebook of the newest schema where it writes.
#pragma once

#include "base/result.h"
#include "bench/entry.h"
#include "bench/run_sheet.h"
#include "notebook/notebook.h"
#include "trials/trial.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::notebook {

// Its place says what was asked for.
[[nodiscard]] base::Problem no_such_bench_run(const std::string& uid);

struct BenchRun {
  std::string uid;  // 32 hexadecimal digits, made by whoever begins it
  std::string trial_uid;
  bench::RunToCut to_cut;
  std::string begun_at_utc;
  std::string who;
  std::vector<bench::Entry> entries;  // in the order in which they came in

  bool operator==(const BenchRun&) const = default;
};

// The same uid again is the same run, and nothing is begun. Refused where there is no such trial,
// and where the uid is that of a run otherwise begun.
[[nodiscard]] std::optional<base::Problem> begin_bench_run(Notebook& notebook, const BenchRun& run);

// What came in for a run at once, in order.
struct ArrivedEntries {
  std::string run_uid;
  std::vector<bench::Entry> entries;
};

// All of it in one transaction, on the disk when this returns. For each of `arrived`: a Problem
// where there is no such run or where an id is there already and says something else, or is of
// another run; of that one nothing is kept then. An entry that is there already is passed over.
[[nodiscard]] std::vector<std::optional<base::Problem>> keep_entries(
    Notebook& notebook, std::span<const ArrivedEntries> arrived);

// In the order in which they were begun. Throws NotebookDamaged where a row is not as it was
// written.
[[nodiscard]] std::vector<BenchRun> bench_runs_of(const Notebook& notebook,
                                                  const std::string& trial_uid);
[[nodiscard]] std::vector<BenchRun> bench_runs_in_block(const Notebook& notebook,
                                                        const std::string& trial_uid,
                                                        int block);
[[nodiscard]] std::vector<BenchRun> all_bench_runs(const Notebook& notebook);
[[nodiscard]] std::optional<BenchRun> bench_run(const Notebook& notebook, const std::string& uid);

// A run that is over, into its trial as one entry of the journal. `of_the_run`: the trial by its
// name, with that run alone. Fails as take() does (kept_trials.h).
[[nodiscard]] base::Result<JournalEntry> put_in_trial(Notebook& notebook,
                                                      const trials::Trial& of_the_run,
                                                      const Authorship& by);

// Why keep_entries() would keep nothing of it; nothing where it would.
[[nodiscard]] std::optional<base::Problem> problem_of(const Notebook& notebook,
                                                      const ArrivedEntries& arrived);

}  // namespace keenfall::notebook
