#include "base/plain_number.h"
#include "benchmarks/benchmark.h"
#include "benchmarks/long_table_file.h"
#include "benchmarks/made_trial.h"
#include "benchmarks/peers.h"
#include "benchmarks/results_table.h"
#include "benchmarks/trial_file.h"
#include "benchmarks/working_folder.h"
#include "notebook/strike.h"
#include "workbench/notebook_changes.h"
#include "workbench/notebook_pages.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <filesystem>
#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr int kManyRuns = 5000;
constexpr TrialSize kSomeRuns{.blades = 25, .media = 4, .runs = 10};  // 1,000, 24 readings each
constexpr std::size_t kChanges = 100;
constexpr double kTakingSeconds = 40;
constexpr double kFileMegabytes = 250;
constexpr double kShowingMs = 150;
constexpr double kChangeMs = 10;

const workbench::Hand kHand{
    .who = "R.", .machine_words = "bench-2", .at_utc = "2026-11-26T12:00:00Z"};

double ms_of(const std::function<void()>& work) {
  const auto began = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - began)
      .count();
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  return *middle;
}

void need(bool is_so, const std::string& otherwise) {
  if (!is_so) throw std::runtime_error(otherwise);
}

// A new notebook with the table in it.
Findings taken(const std::string& notebook, const std::string& table) {
  need(workbench::new_notebook(notebook, "keenfall", kHand).has_value(), "no notebook was made");
  const auto taken = workbench::take_into({.notebook = notebook, .tables = {table}}, kHand);
  need(taken.has_value(), "the table was not taken");
  return {{"readings", static_cast<double>(taken->taken.readings_added)},
          {"file_mb", static_cast<double>(std::filesystem::file_size(notebook)) / 1e6}};
}

// One reading of each run that is not struck yet.
std::vector<notebook::StrikeRequest> strikes_in(const trials::Trial& trial) {
  std::vector<notebook::StrikeRequest> strikes;
  for (const trials::Run& run : trial.runs) {
    strikes.push_back({.trial = trial.name,
                       .blade = run.arm.blade,
                       .medium = run.arm.medium.name,
                       .run = run.name,
                       .cuts = run.readings.front().cuts,
                       .reason = "slipped"});
  }
  return strikes;
}

// Of changes to a notebook that stays open, as at a bench, and of commands, which open and close
// it.
Findings changed(const std::string& notebook, const trials::Trial& trial) {
  const auto strikes = strikes_in(trial);
  std::vector<double> open;
  {
    auto opened = notebook::Notebook::open_to_write(notebook, workbench::opener_of(kHand));
    need(opened.has_value(), "the notebook was not opened");
    for (std::size_t i = 0; i < kChanges; ++i) {
      open.push_back(ms_of([&] {
        const auto by = workbench::authorship_of(kHand);
        need(notebook::strike(*opened, strikes[i], by).has_value(), "a strike was refused");
      }));
    }
  }
  std::vector<double> commands;
  for (std::size_t i = kChanges; i < 2 * kChanges; ++i) {
    commands.push_back(ms_of([&] {
      need(workbench::strike_in(notebook, strikes[i], kHand).has_value(), "a strike was refused");
    }));
  }
  return {{"change_ms", median(std::move(open))}, {"command_ms", median(std::move(commands))}};
}

Findings shown_and_changed(const std::string& notebook) {
  std::vector<double> showing;
  for (int i = 0; i < 5; ++i) {
    showing.push_back(ms_of([&] {
      const auto found = workbench::trial_in(notebook, "");
      need(found && found->trial.runs.size() == 1000, "not all runs were shown");
    }));
  }
  Findings found = changed(notebook, workbench::trial_in(notebook, "")->trial);
  found["show_ms"] = median(std::move(showing));
  return found;
}

std::vector<std::string> row_of(const std::string& name, const Measured& measured) {
  return {name,
          base::with_decimals(measured.cpu_s, 2),
          base::with_decimals(measured.wall_s, 2),
          grouped(measured.peak_memory_mb),
          grouped(measured.findings.at("file_mb"))};
}

void print_bars(const Measured& taking, const Findings& used) {
  for (const Bar& bar :
       {Bar{.what = "taking, s on the wall", .below = kTakingSeconds, .measured = taking.wall_s},
        Bar{.what = "file, MB", .below = kFileMegabytes, .measured = taking.findings.at("file_mb")},
        Bar{.what = "opening and showing a trial of 1,000 runs, ms",
        .below = kShowingMs,
        .measured = used.at("show_ms")},
        Bar{.what = "one durable change, median, ms",
        .below = kChangeMs,
        .measured = used.at("change_ms")}}) {
    fmt::print("{}", in_words(bar));
  }
}

}  // namespace

Outcome keeping_a_notebook() {
  const WorkingFolder folder;
  const auto path = [&](const char* name) { return (folder.path() / name).string(); };
  const auto many = write_long_table(folder.path() / "many.csv", kManyRuns);
  if (!many) return many.error();
  if (auto problem = write_trial(path("some.csv"), [] { return made_trial(kSomeRuns); })) {
    return problem;
  }
  const auto ours = measured_work([&] { return taken(path("many.keen"), many->path.string()); });
  if (!ours) return ours.error();
  if (ours->findings.at("readings") != many->readings) {
    return base::Problem{.sentence = "not all that was written was taken in"};
  }
  const auto filled = measured_work([&] { return taken(path("some.keen"), path("some.csv")); });
  if (!filled) return filled.error();
  const auto used = measured_work([&] { return shown_and_changed(path("some.keen")); });
  if (!used) return used.error();
  const auto python = measured_peer(
      {.interpreter = "python3",
       .file = "keep_rows.py",
       .words = {many->path.string(), path("peer.sqlite"), std::to_string(kChanges)}});
  if (python && !*python) return python->error();

  ResultsTable results{.heads = {grouped(many->readings) + " readings kept by",
                                 "CPU, s",
                                 "wall, s",
                                 "peak memory, MB",
                                 "file, MB"},
                       .rows = {row_of("Keenfall", *ours)}};
  if (python) results.rows.push_back(row_of("Python, sqlite3", **python));
  fmt::print("{}", in_columns(results));
  const Findings& seen = used->findings;
  fmt::print("  medians of {}: a durable change {} ms; a command that makes one {} ms{}\n",
             kChanges,
             base::with_figures(seen.at("change_ms"), 2),
             base::with_figures(seen.at("command_ms"), 2),
             python ? "; a change by Python, sqlite3, " +
                          base::with_figures((*python)->findings.at("change_ms"), 2) + " ms"
                    : "");
  print_bars(*ours, seen);
  return {};
}

}  // namespace keenfall::benchmarks
