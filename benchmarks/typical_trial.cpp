#include "base/plain_number.h"
#include "benchmarks/benchmark.h"
#include "benchmarks/judged.h"
#include "benchmarks/judging_cost.h"
#include "benchmarks/measured_child.h"
#include "benchmarks/peers.h"
#include "benchmarks/results_table.h"
#include "benchmarks/trial_file.h"
#include "benchmarks/working_folder.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/quick/quick_fit.h"
#include "workbench/matting_bench.h"

#include <fmt/format.h>

#include <algorithm>
#include <ctime>
#include <optional>
#include <stdexcept>
#include <string>

namespace keenfall::benchmarks {

namespace {

constexpr double kQuickMs = 3;
constexpr const char* kBlade = "C";
constexpr const char* kOver = "A";
constexpr const char* kMedium = "new matting";

trials::Trial demo_trial() { return workbench::matting_bench(workbench::kMattingBenchSeed); }

const verdicts::Comparison& compared(const verdicts::Judgement& judgement) {
  const auto found = std::ranges::find_if(judgement.comparisons, [&](const auto& comparison) {
    const trials::Arm& a = judgement.arms[comparison.a].arm;
    const trials::Arm& b = judgement.arms[comparison.b].arm;
    return a.blade == kBlade && b.blade == kOver && a.medium.name == kMedium &&
           b.medium.name == kMedium;
  });
  if (found == judgement.comparisons.end()) throw std::runtime_error("the comparison is missing");
  return *found;
}

Findings fully_judged() {
  const verdicts::Judgement judgement = judged(demo_trial(), base::unwatched());
  const verdicts::Comparison& comparison = compared(judgement);
  if (!comparison.quick) throw std::runtime_error("the quick engine gave no answer");
  return {{"ratio", comparison.ratio.median}, {"quick_ratio", comparison.quick->ratio.median}};
}

// The mean of many fits, from the trial's readings to the draws.
Findings quickly_fitted(const trials::Trial& trial) {
  constexpr int kTimes = 200;
  const blunting::ModelSpec model = blunting::default_model();
  const blunting::SeriesKey key = blunting::fits_of(trial).at(0);
  const std::clock_t began = std::clock();
  std::size_t draws = 0;
  for (int i = 0; i < kTimes; ++i) {
    const auto data = blunting::prepare(trial, key, model.errors);
    if (!data) throw std::runtime_error(base::in_words(data.error()));
    draws += blunting::quick_fit(*data, model).arms.at(0).log_half_keenness.size();
  }
  const double spent = static_cast<double>(std::clock() - began) / CLOCKS_PER_SEC;
  return {{"fit_cpu_s", spent / kTimes}, {"draws", static_cast<double>(draws) / kTimes}};
}

void print_bar(const std::string& what, const Measured& quick) {
  constexpr double kMsInSecond = 1000;
  fmt::print("{}",
             in_words({.what = what + ", CPU, ms",
                       .below = kQuickMs,
                       .measured = kMsInSecond * quick.findings.at("fit_cpu_s")}));
}

}  // namespace

Outcome typical_trial() {
  const WorkingFolder folder;
  const auto file = folder.path() / "demo.csv";
  if (auto problem = write_trial(file, demo_trial)) return problem;
  const auto full = measured_work(fully_judged);
  if (!full) return full.error();
  const auto quick = measured_work([] { return quickly_fitted(demo_trial()); });
  if (!quick) return quick.error();
  const auto small = measured_work([] { return quickly_fitted(trial_in(small_trial_table())); });
  if (!small) return small.error();
  const auto peer = measured_peer({.interpreter = "Rscript",
                                   .file = "mixed_model.R",
                                   .words = {file.string(), kBlade, kOver, kMedium},
                                   .library = "nlme"});
  if (peer && !*peer) return peer->error();

  std::string answers = fmt::format("  {} against {} on {}, times as long: full {}, quick {}",
                                    kBlade,
                                    kOver,
                                    kMedium,
                                    base::with_figures(full->findings.at("ratio"), 3),
                                    base::with_figures(full->findings.at("quick_ratio"), 3));
  std::optional<JudgingCost> cost_of_peer;
  if (peer) {
    cost_of_peer = JudgingCost{.name = "R, nlme: a point estimate only",
                               .cpu_s = (*peer)->findings.at("fit_cpu_s"),
                               .peak_memory_mb = (*peer)->peak_memory_mb};
    answers += fmt::format(", R {}", base::with_figures((*peer)->findings.at("ratio"), 3));
  }
  fmt::print(
      "{}",
      costs_text({{.name = "Keenfall, full engine and all that is said",
                   .cpu_s = full->cpu_s,
                   .peak_memory_mb = full->peak_memory_mb},
                  {.name = "Keenfall, quick engine", .cpu_s = quick->findings.at("fit_cpu_s")}},
                 cost_of_peer));
  fmt::print("{}\n", answers);
  print_bar("the quick engine on the demo's trial", *quick);
  print_bar("the quick engine on the small trial", *small);
  return {};
}

}  // namespace keenfall::benchmarks
