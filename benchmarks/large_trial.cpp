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
#include <string>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr double kHundredRunsSeconds = 6;
constexpr double kLargeSeconds = 60;
constexpr double kLargeMegabytes = 500;
constexpr double kSmallestEffectiveSize = 400;

struct Peer {
  std::string name;
  std::string file;
  std::vector<std::string> words;  // after the table
};

base::Result<Measured> measured_judging(const TrialSize& size) {
  auto measured = measured_work([&size] {
    const trials::Trial trial = made_trial(size);
    const verdicts::Judgement judgement = judged(trial, shown_progress());
    return Findings{{"runs", static_cast<double>(judgement.runs.size())},
                    {"arms", static_cast<double>(judgement.arms.size())},
                    {"readings", readings_in(trial)},
                    {"comparisons", static_cast<double>(judgement.comparisons.size())},
                    {"ess_bulk_min", judgement.fit.ess_bulk_min}};
  });
  if (!measured) return measured;
  const auto number = [&measured](const char* name) {
    return grouped(measured->findings.at(name));
  };
  fmt::print("  {} runs in {} arms, {} readings, {} comparisons; the fit is usable\n",
             number("runs"),
             number("arms"),
             number("readings"),
             number("comparisons"));
  return measured;
}

// Absent: the peer is not installed.
base::Result<std::optional<JudgingCost>> cost_of(const Peer& peer, const TrialSize& size) {
  const WorkingFolder folder;
  const auto file = folder.path() / "made.csv";
  if (auto problem = write_trial(file, [&size] { return made_trial(size); })) {
    return base::failed(*problem);
  }
  PeerScript script{
      .interpreter = "Rscript", .file = peer.file, .words = {file.string()}, .library = "nlme"};
  script.words.insert(script.words.end(), peer.words.begin(), peer.words.end());
  const auto measured = measured_peer(script);
  if (!measured) return std::optional<JudgingCost>();
  if (!*measured) return base::failed(measured->error());
  return JudgingCost{.name = peer.name,
                     .cpu_s = (*measured)->findings.at("fit_cpu_s"),
                     .peak_memory_mb = (*measured)->peak_memory_mb};
}

// The judging, beside its peer; prints what both cost.
base::Result<Measured> judged_beside(const Peer& peer, const TrialSize& size) {
  auto ours = measured_judging(size);
  if (!ours) return ours;
  const auto cost = cost_of(peer, size);
  if (!cost) return base::failed(cost.error());
  fmt::print("{}",
             costs_text({{.name = "Keenfall, full engine and all that is said",
                          .cpu_s = ours->cpu_s,
                          .peak_memory_mb = ours->peak_memory_mb}},
                        *cost));
  return ours;
}

}  // namespace

Outcome hundred_runs() {
  const auto ours = judged_beside({.name = "R, nlme: a point estimate only",
                                   .file = "mixed_model.R",
                                   .words = {"blade 2", "blade 1", "medium 1"}},
                                  kHundredRuns);
  if (!ours) return ours.error();
  fmt::print("  smallest bulk effective size: {}\n", grouped(ours->findings.at("ess_bulk_min")));
  fmt::print("{}",
             in_words({.what = "CPU, s", .below = kHundredRunsSeconds, .measured = ours->cpu_s}));
  return {};
}

Outcome large_trial() {
  fmt::print("  judging takes a minute or two\n");
  const auto ours =
      judged_beside({.name = "R: nls for each run, then lme", .file = "two_stage.R"}, {});
  if (!ours) return ours.error();
  fmt::print("{}", in_words({.what = "CPU, s", .below = kLargeSeconds, .measured = ours->cpu_s}));
  fmt::print("{}",
             in_words({.what = "smallest bulk effective size",
                       .at_least = kSmallestEffectiveSize,
                       .measured = ours->findings.at("ess_bulk_min")}));
  fmt::print(
      "{}",
      in_words(
          {.what = "peak memory, MB", .below = kLargeMegabytes, .measured = ours->peak_memory_mb}));
  return {};
}

}  // namespace keenfall::benchmarks
