#include "base/plain_number.h"
#include "benchmarks/benchmark.h"
#include "benchmarks/in_turn.h"
#include "benchmarks/made_trial.h"
#include "benchmarks/plain_sampled.h"
#include "benchmarks/results_table.h"
#include "benchmarks/trial_file.h"
#include "benchmarks/working_folder.h"

#include <fmt/format.h>

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr double kTimesRstan = 30;
constexpr double kTimesRstanStretch = 100;

double cpu_of(const Measured& measured) { return measured.findings.at("fit_cpu_s"); }
double size_of(const Measured& measured) { return measured.findings.at("ess_bulk_min"); }
double rate_of(const Measured& measured) { return size_of(measured) / cpu_of(measured); }

std::vector<std::string> row_of(const std::string& name, const std::vector<Measured>& rounds) {
  return {
      name,
      base::with_figures(median_of(rounds, cpu_of), 3),
      grouped(median_of(rounds, [](const Measured& measured) { return measured.peak_memory_mb; })),
      grouped(median_of(rounds, size_of)),
      base::with_figures(median_of(rounds, rate_of), 3)};
}

std::string name_of(StanForm form) {
  return form == StanForm::levels ? "rstan, levels of runs" : "rstan, deviations of runs";
}

void print_beside(StanForm form,
                  const std::vector<Measured>& ours,
                  const std::vector<Measured>& rstan) {
  const double times = median_ratio(ours, rstan, rate_of);
  const auto finding = [&rstan](const char* name) {
    return median_of(rstan, [name](const Measured& one) { return one.findings.at(name); });
  };
  fmt::print("{}",
             in_words({.what = "ESS a CPU-s, times that of " + name_of(form),
                       .at_least = kTimesRstan,
                       .measured = times}));
  fmt::print(
      "  beyond it, at least {}: {}; the means differ by {} Monte-Carlo errors (root mean "
      "square, 1 by chance)\n",
      kTimesRstanStretch,
      times >= kTimesRstanStretch ? "met" : "not met",
      base::with_figures(finding("departure"), 2));
  if (finding("divergences") > 0) {
    fmt::print("  rstan diverged {} times a fit\n", finding("divergences"));
  }
}

// rstan's measure of our draws in place of ours, so that one program measures all.
void measure_by_rstan(std::vector<Measured>& ours, const std::vector<Measured>& rstan) {
  for (std::size_t i = 0; i < rstan.size(); ++i) {
    ours[i].findings["ess_bulk_min"] = rstan[i].findings.at("ours_ess_bulk_min");
  }
}

Outcome sampled_in_turn(const PlainTrial& trial, const std::vector<StanForm>& forms) {
  std::vector<Contender> contenders{
      [&trial](int round) { return measured_plain_fit(trial, round); }};
  for (const StanForm form : forms) {
    contenders.emplace_back(
        [&trial, form](int round) { return measured_rstan(trial, form, round); });
  }
  auto rounds = measured_in_turn(contenders);
  if (!rounds) return rounds.error();
  std::vector<Measured>& ours = rounds->front();
  measure_by_rstan(ours, rounds->at(1));
  fmt::print("  {} runs in {} arms, {} readings\n",
             grouped(ours[0].findings.at("runs")),
             grouped(ours[0].findings.at("arms")),
             grouped(ours[0].findings.at("readings")));
  ResultsTable table{
      .heads = {"sampler", "CPU, s", "peak memory, MB", "smallest bulk ESS", "ESS a CPU-s"},
      .rows = {row_of("Keenfall, one thread", ours)}};
  for (std::size_t i = 0; i < forms.size(); ++i) {
    if (!rounds->at(i + 1).empty()) {
      table.rows.push_back(row_of(name_of(forms[i]), rounds->at(i + 1)));
    }
  }
  fmt::print("{}", in_columns(table));
  for (std::size_t i = 0; i < forms.size(); ++i) {
    if (!rounds->at(i + 1).empty()) print_beside(forms[i], ours, rounds->at(i + 1));
  }
  return {};
}

}  // namespace

Outcome plain_model() {
  fmt::print(
      "  ESS: the smallest effective size, by rstan's ess_bulk, of arms, scatters and both "
      "levels of every run;\n"
      "  warm-up counts, compiling does not; {} rounds in turn, the median of each\n",
      kRounds);
  const WorkingFolder folder;
  const auto draws = folder.path() / "draws";
  if (auto problem = sampled_in_turn({.table = small_trial_table(), .draws = draws},
                                     {StanForm::levels, StanForm::deviations})) {
    return problem;
  }
  const auto made = folder.path() / "made.csv";
  if (auto problem = write_trial(made, [] { return made_trial(kHundredRuns); })) return problem;
  // By deviations one fit of so many runs takes rstan many minutes.
  return sampled_in_turn({.table = made, .draws = draws}, {StanForm::levels});
}

}  // namespace keenfall::benchmarks
