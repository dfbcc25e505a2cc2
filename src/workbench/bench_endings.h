// The end of a run at the bench: what may still come after it, and how the run comes into its trial
// and out of it. Private to the folder.
#pragma once

#include "base/result.h"
#include "bench/entry.h"
#include "notebook/bench_runs.h"
#include "notebook/notebook.h"
#include "wire/bench_page.h"
#include "workbench/judged_now.h"
#include "workbench/notebook_opening.h"
#include "workbench/trials_at_hand.h"

#include <optional>
#include <vector>

namespace keenfall::workbench {

// Over, and put there; or there already, from another notebook say.
[[nodiscard]] bool is_in_trial(const notebook::Notebook& opened,
                               const TrialAtHand& trial,
                               const wire::BenchRunTold& run);

// A run that is over comes into its trial: with the entry that ends it, where it was not put there
// yet, and where that is asked for. An end that arrives once more does not bring back what was
// undone, and one in which nothing was read is closed and comes nowhere. Says in `run` whether it
// is there, and else why not.
void put_where_over(AtHand& at_hand,
                    notebook::Notebook& opened,
                    wire::BenchRunTold& run,
                    const Hand& hand,
                    bool is_asked_for);

// An end that is not kept yet.
[[nodiscard]] bool brings_an_end(const notebook::BenchRun& run,
                                 const std::vector<bench::Entry>& arriving);

// A run that is over is in its trial as it was: what comes before the end is taken back after it.
[[nodiscard]] std::optional<base::Problem> problem_after_the_end(
    const notebook::BenchRun& run, const std::vector<bench::Entry>& arriving);

// Whoever takes the end back takes the run out of its trial again.
[[nodiscard]] std::optional<base::Problem> take_out_where_end_is_taken_back(
    notebook::Notebook& opened,
    const notebook::BenchRun& run,
    const std::vector<bench::Entry>& arriving,
    const Hand& hand);

}  // namespace keenfall::workbench
