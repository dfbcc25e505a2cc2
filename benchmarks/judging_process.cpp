#include "base/plain_number.h"
#include "benchmarks/benchmark.h"
#include "benchmarks/in_turn.h"
#include "benchmarks/peers.h"
#include "benchmarks/results_table.h"
#include "benchmarks/trial_file.h"
#include "benchmarks/working_folder.h"

#include <fmt/format.h>

#include <filesystem>
#include <string>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr double kTimesNlme = 1;

double cpu_of(const Measured& measured) { return measured.cpu_s; }

std::vector<std::string> row_of(const std::string& name, const std::vector<Measured>& rounds) {
  return {name,
          base::with_figures(median_of(rounds, cpu_of), 3),
          base::with_figures(median_of(rounds, [](const Measured& one) { return one.wall_s; }), 3),
          grouped(median_of(rounds, [](const Measured& one) { return one.peak_memory_mb; }))};
}

// The answers must have been written: an exit code of 0 alone could come from elsewhere.
base::Result<Measured> measured_judging(const std::filesystem::path& answers) {
  auto measured =
      measured_program({KEENFALL_PROGRAM, "judge", small_trial_table().string()}, answers);
  if (measured && std::filesystem::file_size(answers) == 0) {
    return base::failed({.kind = base::ProblemKind::unsuitable_data,
                         .sentence = "Not measured: the program wrote no answers."});
  }
  return measured;
}

}  // namespace

Outcome judging_process() {
  const WorkingFolder folder;
  const auto rounds = measured_in_turn(
      {[&folder](int /*round*/) { return measured_judging(folder.path() / "answers"); },
       [](int /*round*/) {
         return measured_peer({.interpreter = "Rscript",
                               .file = "mixed_model.R",
                               .words = {small_trial_table().string(), "B", "A", "clean"},
                               .library = "nlme"});
       }});
  if (!rounds) return rounds.error();
  const auto& ours = rounds->at(0);
  const auto& beside = rounds->at(1);
  fmt::print(
      "  whole processes, start and reading of the table included; {} pairs in turn, the median of "
      "each\n",
      kRounds);
  ResultsTable table{.heads = {"process", "CPU, s", "wall, s", "peak memory, MB"},
                     .rows = {row_of("keenfall judge, all that is said", ours)}};
  if (!beside.empty()) table.rows.push_back(row_of("R, nlme: a point estimate only", beside));
  fmt::print("{}", in_columns(table));
  if (beside.empty()) return {};
  fmt::print(
      "  of R's, the fit alone takes {} CPU-s\n",
      base::with_figures(
          median_of(beside, [](const Measured& one) { return one.findings.at("fit_cpu_s"); }), 2));
  fmt::print("{}",
             in_words({.what = "CPU of a process as a share of R's",
                       .below = kTimesNlme,
                       .measured = median_ratio(ours, beside, cpu_of)}));
  return {};
}

}  // namespace keenfall::benchmarks
