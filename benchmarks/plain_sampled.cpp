#include "benchmarks/plain_sampled.h"

#include "benchmarks/made_trial.h"
#include "benchmarks/peers.h"
#include "benchmarks/trial_file.h"
#include "blunting/inference/full_fit.h"

#include <cstddef>
#include <cstdint>
#include <ctime>
#include <fstream>
#include <stdexcept>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr int kChains = 4;  // as rstan has

void append(std::ofstream& file, const blunting::Draws& draws) {
  file.write(reinterpret_cast<const char*>(draws.data()),  // NOLINT: bytes as they are
             static_cast<std::streamsize>(draws.size() * sizeof(double)));
}

// In the order that peers/plain_nuts.R expects.
void write_draws(const std::filesystem::path& path,
                 const blunting::BluntingData& data,
                 const blunting::BluntingFit& fit) {
  std::vector<std::size_t> as_in_table(data.runs.size());
  for (std::size_t r = 0; r < data.runs.size(); ++r) as_in_table.at(data.runs[r].run) = r;
  std::ofstream file(path, std::ios::binary);
  for (const std::size_t r : as_in_table) {
    const blunting::ArmDraws& arm = fit.arms[data.runs[r].arm];
    for (const auto* draws : {&arm.log_start, &arm.log_half_keenness, &arm.shape}) {
      append(file, *draws);
    }
    append(file, fit.runs[r].log_start);
    append(file, fit.runs[r].log_half_keenness);
  }
  append(file, fit.start_scatter.at(0));
  append(file, fit.run_scatter.at(0));
  append(file, fit.reading_scatter);
  file.close();
  if (!file) throw std::runtime_error("cannot be written: " + path.string());
}

Findings fitted(const PlainTrial& plain, int round) {
  const trials::Trial trial = trial_in(plain.table);
  const blunting::SeriesKey key = blunting::fits_of(trial).at(0);
  const blunting::ModelSpec model = blunting::plain_model();
  const std::clock_t began = std::clock();
  const auto data = blunting::prepare(trial, key, model.errors);
  if (!data) throw std::runtime_error(base::in_words(data.error()));
  const auto fit = blunting::fit_blunting(*data,
                                          model,
                                          blunting::sampling_for(*data),
                                          {static_cast<std::uint64_t>(round) + 1},
                                          base::one_thread(),
                                          base::unwatched());
  const double spent = static_cast<double>(std::clock() - began) / CLOCKS_PER_SEC;
  if (!fit) throw std::runtime_error(base::in_words(fit.error()));
  if (!fit->diagnostics.usable) throw std::runtime_error(fit->diagnostics.reasons.front());
  if (fit->chains != kChains || !data->set_aside.empty()) {
    throw std::runtime_error("not what the peer samples");
  }
  write_draws(plain.draws, *data, *fit);
  return {{"fit_cpu_s", spent},
          {"ess_bulk_min", fit->diagnostics.ess_bulk_min},
          {"runs", static_cast<double>(data->runs.size())},
          {"arms", static_cast<double>(data->arms.size())},
          {"readings", readings_in(trial)}};
}

}  // namespace

base::Result<Measured> measured_plain_fit(const PlainTrial& trial, int round) {
  return measured_work([&] { return fitted(trial, round); });
}

std::optional<base::Result<Measured>> measured_rstan(const PlainTrial& trial,
                                                     StanForm form,
                                                     int round) {
  const std::filesystem::path root(KEENFALL_SOURCE_DIR);
  const auto model = form == StanForm::deviations
                         ? root / "tests" / "agreement" / "plain.stan"
                         : root / "benchmarks" / "peers" / "plain_centred.stan";
  return measured_peer({.interpreter = "Rscript",
                        .file = "plain_nuts.R",
                        .words = {trial.table.string(),
                                  model.string(),
                                  std::to_string(round + 1),
                                  (root / "build" / "bench").string(),
                                  trial.draws.string(),
                                  std::to_string(kChains)},
                        .library = "rstan"});
}

}  // namespace keenfall::benchmarks
