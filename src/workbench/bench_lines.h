// A trial's runs at the bench as lines: those of its sealed plan in the order of cutting, and
// further ones. Private to the folder. The trial has a sealed plan.
#pragma once

#include "bench/run_sheet.h"
#include "notebook/bench_runs.h"
#include "wire/bench_page.h"
#include "workbench/trials_at_hand.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::workbench {

[[nodiscard]] std::vector<wire::BenchLine> bench_lines(const notebook::Notebook& opened,
                                                       const TrialAtHand& trial,
                                                       std::span<const notebook::BenchRun> runs);

// Under way, else the first that is open, else the first that does not count.
[[nodiscard]] std::optional<std::size_t> next_of(const std::vector<wire::BenchLine>& lines);

[[nodiscard]] std::size_t left_in_block(const std::vector<wire::BenchLine>& lines, int block);

// Has the trial a run of that arm and name?
[[nodiscard]] bool has_run_called(const TrialAtHand& trial, const bench::RunToCut& to_cut);

// Has it one that reads the same, such as of a notebook that was merged? False where nothing was
// read.
[[nodiscard]] bool has_run_that_reads_as(const TrialAtHand& trial, const trials::Run& cut);

// As wanted, or with a number behind it: no run of the arm is called so yet.
[[nodiscard]] std::string free_name(const std::string& wanted,
                                    const TrialAtHand& trial,
                                    const bench::RunToCut& to_cut,
                                    std::span<const notebook::BenchRun> runs);

}  // namespace keenfall::workbench
