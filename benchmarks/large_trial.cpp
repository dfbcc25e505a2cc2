#include "benchmarks/benchmark.h"
#include "benchmarks/judged.h"
#include "benchmarks/judging_cost.h"
#include "benchmarks/made_trial.h"
#include "benchmarks/measured_child.h"
#include "benchmarks/peers.h"
#include "benchmarks/results_table.h"
#include "benchmarks/trial_file.h"
#include "benchmarks/working_folder.h"

#include <fmt/format.h>

#include <optional>

namespace keenfall::benchmarks {

namespace {

constexpr double kJudgingSeconds = 120;
constexpr double kJudgingMegabytes = 500;

}  // namespace

Outcome large_trial() {
  fmt::print("  judging takes a minute or two\n");
  const auto ours = measured_work([] {
    const trials::Trial trial = made_trial({});
    const verdicts::Judgement judgement = judged(trial, shown_progress());
    return Findings{{"runs", static_cast<double>(judgement.runs.size())},
                    {"arms", static_cast<double>(judgement.arms.size())},
                    {"readings", readings_in(trial)},
                    {"comparisons", static_cast<double>(judgement.comparisons.size())}};
  });
  if (!ours) return ours.error();
  const auto number = [&ours](const char* name) { return grouped(ours->findings.at(name)); };
  fmt::print("  {} runs in {} arms, {} readings, {} comparisons; the fit is usable\n",
             number("runs"),
             number("arms"),
             number("readings"),
             number("comparisons"));

  const WorkingFolder folder;
  const auto file = folder.path() / "large.csv";
  if (auto problem = write_trial(file, [] { return made_trial({}); })) return problem;
  const auto peer =
      measured_peer({.interpreter = "Rscript", .file = "two_stage.R", .words = {file.string()}});
  if (peer && !*peer) return peer->error();

  std::optional<JudgingCost> cost_of_peer;
  if (peer) {
    cost_of_peer = JudgingCost{.name = "R: nls for each run, then lme",
                               .cpu_s = (*peer)->findings.at("fit_cpu_s"),
                               .peak_memory_mb = (*peer)->peak_memory_mb};
  }
  const JudgingCost cost{.name = "Keenfall, full engine and all that is said",
                         .cpu_s = ours->cpu_s,
                         .peak_memory_mb = ours->peak_memory_mb};
  fmt::print("{}", costs_text({cost}, cost_of_peer));
  fmt::print("{}", in_words({.what = "CPU, s", .below = kJudgingSeconds, .measured = ours->cpu_s}));
  fmt::print("{}",
             in_words({.what = "peak memory, MB",
                       .below = kJudgingMegabytes,
                       .measured = ours->peak_memory_mb}));
  return {};
}

}  // namespace keenfall::benchmarks
