#include "trust/measuring/calibration.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "blunting/inference/sampled.h"
#include "blunting/quick/quick_fit.h"

#include <fmt/format.h>

#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace keenfall::trust {

namespace {

using blunting::ParameterValues;

const blunting::PriorCentres kCentres{.log_start = std::log(104.0),
                                      .log_half_keenness = std::log(40.0)};

std::vector<CalibrationDesign> all_designs() {
  blunting::ModelSpec robust = blunting::default_model();
  robust.centres = kCentres;
  blunting::ModelSpec gaussian = robust;
  gaussian.errors = blunting::ReadingErrors::gaussian;
  blunting::ModelSpec plain = blunting::plain_model();
  plain.centres = kCentres;
  return {{.name = "gaussian",
           .about = "default model but Gaussian errors: two media, blocks, repeats, spots",
           .spec = gaussian,
           .media = 2,
           .repeats = 2,
           .blocks = 3},
          {.name = "robust",
           .about = "default model with single readings: two specimens of each blade",
           .spec = robust,
           .runs_each = 4,
           .specimens_each = 2},
          {.name = "plain", .about = "plain model", .spec = plain, .repeats = 2}};
}

using Named = std::map<std::string, double>;

void put_each(Named& named, const std::string& what, const std::vector<double>& values) {
  for (std::size_t i = 0; i < values.size(); ++i)
    named[fmt::format("{} {}", what, i + 1)] = values[i];
}

void put_first(Named& named, const std::string& what, const std::vector<double>& values) {
  if (!values.empty()) named[what] = values.front();
}

// The arm to compare the first with: the other blade in its medium.
std::size_t beside_first(const blunting::BluntingData& data) {
  std::size_t arm = 1;
  while (data.medium_of_arm.at(arm) != data.medium_of_arm[0]) ++arm;
  return arm;
}

Named parameters_of(const ParameterValues& values, const blunting::BluntingData& data) {
  Named named;
  put_each(named, "start of arm", values.start_mean);
  put_each(named, "half keenness of arm", values.half_mean);
  put_each(named, "shape of arm", values.shape);
  put_each(named, "start scatter of medium", values.start_scatter);
  put_each(named, "run scatter of medium", values.run_scatter);
  put_each(named, "mean shape of medium", values.shape_mean);
  put_first(named, "effect of the first block", values.block_effect);
  put_first(named, "effect of the first specimen", values.specimen_effect);
  put_first(named, "start of the first run", values.run_start);
  put_first(named, "half keenness of the first run", values.run_half);
  named["ratio of half keenness"] = values.half_mean[0] - values.half_mean[beside_first(data)];
  named["reading scatter"] = values.reading_scatter;
  const auto put_if_any = [&named](const std::string& what, double value) {
    if (value != 0) named[what] = value;
  };
  put_if_any("spot scatter", values.checkpoint_scatter);
  put_if_any("shape scatter", values.shape_scatter);
  put_if_any("block scatter", values.block_scatter);
  put_if_any("specimen scatter", values.specimen_scatter);
  put_if_any("effect of the start", values.start_effect);
  put_if_any("drift with the order", values.order_drift);
  return named;
}

using NamedDraws = std::map<std::string, blunting::Draws>;

// Ranks each among `ranked` of its draws.
void count_ranks(Sums& sums, const Named& truth, const NamedDraws& draws, std::size_t ranked) {
  for (const auto& [name, all] : draws) {
    std::size_t below = 0;
    for (std::size_t k = 0; k < ranked; ++k) {
      // The middle of the k-th of so many equal stretches.
      const std::size_t place = (2 * k + 1) * all.size() / (2 * ranked);
      if (all[place] < truth.at(name)) ++below;
    }
    add(sums, fmt::format("{}#{:02}", name, below * kRankBins / (ranked + 1)));
  }
}

struct Attempted {
  NamedDraws draws;
  blunting::FitDiagnostics diagnostics;
};

base::Result<Attempted> attempt(const PriorTrial& trial,
                                const blunting::BluntingDensity& density,
                                const blunting::SamplingOptions& options,
                                base::Seed seed) {
  const auto sampled = blunting::sampled(
      density, "the curves", options, seed, base::one_thread(), base::unwatched());
  if (!sampled) return base::failed(sampled.error());
  Attempted made;
  int divergences = 0;
  for (const numerics::NutsChain& chain : sampled->chains) {
    divergences += chain.divergences;
    const std::span<const double> all(chain.draws);
    for (std::size_t d = 0; d * sampled->dimension < all.size(); ++d) {
      const auto values =
          density.values_at(all.subspan(d * sampled->dimension, sampled->dimension));
      for (const auto& [name, value] : parameters_of(values, trial.data)) {
        made.draws[name].push_back(value);
      }
    }
  }
  blunting::Watched watched;
  for (const auto& named : made.draws) watched.main.push_back(&named.second);
  made.diagnostics =
      diagnostics_of(watched, sampled->chains.size(), divergences, base::one_thread());
  return made;
}

}  // namespace

std::span<const CalibrationDesign> calibration_designs() {
  static const std::vector<CalibrationDesign> all = all_designs();
  return all;
}

std::string definition_of(const CalibrationDesign& design) {
  return fmt::format("calibration {}: {}, media {}, runs {}, repeats {}, blocks {}, specimens {}",
                     design.name,
                     design.about,
                     design.media,
                     design.runs_each,
                     design.repeats,
                     design.blocks,
                     design.specimens_each);
}

Sums full_ranks(const CalibrationDesign& design, const Batch& batch) {
  Sums sums;
  for (int t = 0; t < batch.trials; ++t) {
    const std::uint64_t number = batch.first + static_cast<std::uint64_t>(t);
    const PriorTrial trial = prior_trial(design, number);
    const blunting::BluntingDensity density(trial.data, design.spec);
    const auto fit = blunting::first_or_careful(blunting::sampling_for(trial.data),
                                                [&](const blunting::SamplingOptions& how) {
                                                  return attempt(trial, density, how, {number + 1});
                                                });
    add(sums, "trials");
    add(sums, counted::kUnusable, fit->diagnostics.usable ? 0 : 1);
    count_ranks(sums, parameters_of(trial.truth, trial.data), fit->draws, kRankedDraws);
  }
  return sums;
}

Sums quick_ranks(const CalibrationDesign& design, const Batch& batch) {
  Sums sums;
  for (int t = 0; t < batch.trials; ++t) {
    const PriorTrial trial = prior_trial(design, batch.first + static_cast<std::uint64_t>(t));
    const blunting::QuickFit fit = blunting::quick_fit(trial.data, design.spec);
    NamedDraws draws;
    for (std::size_t a = 0; a < fit.arms.size(); ++a) {
      draws[fmt::format("start of arm {}", a + 1)] = fit.arms[a].log_start;
      draws[fmt::format("half keenness of arm {}", a + 1)] = fit.arms[a].log_half_keenness_steel;
      draws[fmt::format("shape of arm {}", a + 1)] = fit.arms[a].shape;
    }
    blunting::Draws& ratio = draws["ratio of half keenness"] = fit.arms[0].log_half_keenness_steel;
    for (std::size_t d = 0; d < ratio.size(); ++d) {
      ratio[d] -= fit.arms[beside_first(trial.data)].log_half_keenness_steel[d];
    }
    add(sums, "trials");
    count_ranks(sums, parameters_of(trial.truth, trial.data), draws, blunting::kQuickDraws);
  }
  return sums;
}

}  // namespace keenfall::trust
