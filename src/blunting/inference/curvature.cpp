#include "blunting/inference/curvature.h"

#include "blunting/inference/scattered.h"

#include <array>
#include <cmath>
#include <vector>

namespace keenfall::blunting {

namespace {

using Entries = std::vector<Eigen::Triplet<double>>;

// A linear dependence on a few of the sampler's coordinates.
struct Dependence {
  struct Part {
    std::size_t coordinate = 0;
    double slope = 0;
  };
  std::vector<Part> parts;
};

void add_product(Entries& entries, const Dependence& one, const Dependence& other, double factor) {
  for (const auto& a : one.parts) {
    for (const auto& b : other.parts) {
      entries.push_back({static_cast<int>(a.coordinate),
                         static_cast<int>(b.coordinate),
                         factor * a.slope * b.slope});
    }
  }
}

void add_diagonal(Entries& entries, std::size_t coordinate, double curvature) {
  entries.push_back({static_cast<int>(coordinate), static_cast<int>(coordinate), curvature});
}

// A scattered level, its centre's dependence known: how it depends on z and on the centre's parts.
Dependence level_dependence(const Scattered& level, std::size_t z, const Dependence& centre) {
  Dependence dependence{{{z, level.spread}}};
  for (const auto& part : centre.parts) {
    dependence.parts.push_back({part.coordinate, part.slope * (1 - level.centring * level.spread)});
  }
  return dependence;
}

// The prior of a scattered level is a normal in z - w c.
void add_scattered_prior(Entries& entries,
                         const Scattered& level,
                         std::size_t z,
                         const Dependence& centre) {
  Dependence offset{{{z, 1}}};
  for (const auto& part : centre.parts) {
    offset.parts.push_back({part.coordinate, -level.centring * part.slope});
  }
  add_product(entries, offset, offset, level.prior_factor);
}

// Information of one run's readings on (log b0, log tau, log p).
using RunInformation = std::array<std::array<double, 3>, 3>;

RunInformation information_of(const RunData& run, const ParameterValues& values, std::size_t r) {
  RunInformation information{};
  const double shape = values.shape[run.arm];
  for (const Checkpoint& checkpoint : run.checkpoints) {
    if (checkpoint.below_resolution) continue;
    const double variance =
        values.checkpoint_scatter * values.checkpoint_scatter +
        checkpoint.relative_variance * values.reading_scatter * values.reading_scatter;
    std::array<double, 3> slope{1, 0, 0};
    if (checkpoint.cuts > 0) {
      const double log_time = checkpoint.log_cuts - values.run_half[r];
      const double share = 1 / (1 + std::exp(-shape * log_time));
      slope[1] = -shape * share;
      slope[2] = shape * share * log_time;
    }
    for (std::size_t i = 0; i < 3; ++i) {
      for (std::size_t j = 0; j < 3; ++j) information[i][j] += slope[i] * slope[j] / variance;
    }
  }
  return information;
}

Dependence shape_dependence(const BluntingDensity& density,
                            const DensityLevels& levels,
                            const ParameterValues& values,
                            std::size_t arm) {
  const ParameterLayout& at = density.layout();
  if (at.has_shape_level) {
    const std::size_t medium = density.data().medium_of_arm[arm];
    return level_dependence(levels.shape[arm], at.shape + arm, {{{at.shape_mean + medium, 1}}});
  }
  // d log p / d logit, between the bounds 0.2 and 2.
  const double p = values.shape[arm];
  return {{{at.shape + arm, (p - 0.2) * (2 - p) / (1.8 * p)}}};
}

Dependence half_centre_dependence(const ParameterLayout& at,
                                  const DensityLevels& levels,
                                  const RunData& run) {
  Dependence centre{{{at.half_mean + run.arm, 1}}};
  if (at.block_count > 0 && run.block) {
    centre.parts.push_back({at.block + *run.block, levels.block[*run.block].spread});
  }
  if (at.specimen_count > 0 && run.specimen) {
    centre.parts.push_back({at.specimen + *run.specimen, levels.specimen[*run.specimen].spread});
  }
  return centre;
}

// The log of a scale seen through n deviations has Fisher information 2 n; a prior adds about 1.
void add_scales(Entries& entries, const BluntingDensity& density) {
  const ParameterLayout& at = density.layout();
  const double runs = static_cast<double>(at.runs);
  const auto scale = [&entries](std::size_t coordinate, double deviations) {
    add_diagonal(entries, coordinate, 1 + 2 * deviations);
  };
  scale(at.log_start_scatter, 0.6 * runs);
  for (std::size_t s = 0; s < at.scatters; ++s) {
    scale(at.log_run_scatter + s, 0.6 * runs / static_cast<double>(at.scatters));
  }
  double checkpoints = 0;
  for (const RunData& run : density.data().runs) {
    checkpoints += static_cast<double>(run.checkpoints.size());
  }
  scale(at.log_reading_scatter,
        density.data().repeat_degrees_of_freedom + (at.has_checkpoint_scatter ? 0 : checkpoints));
  if (at.has_checkpoint_scatter) scale(at.log_checkpoint_scatter, 1);
  if (at.has_shape_level) scale(at.log_shape_scatter, 1.5);
  if (at.block_count > 0) scale(at.log_block_scatter, 1);
  if (at.specimen_count > 0) scale(at.log_specimen_scatter, 1);
}

void add_priors(Entries& entries, const BluntingDensity& density) {
  const ParameterLayout& at = density.layout();
  const PriorScales& priors = density.spec().priors;
  const auto precision = [](double sd) { return 1 / (sd * sd); };
  for (std::size_t a = 0; a < at.arms; ++a) {
    add_diagonal(entries, at.start_mean + a, precision(priors.log_start_sd));
    add_diagonal(entries, at.half_mean + a, precision(priors.log_half_keenness_sd));
    if (!at.has_shape_level) add_diagonal(entries, at.shape + a, 1);
  }
  for (std::size_t m = 0; at.has_shape_level && m < at.media; ++m) {
    add_diagonal(entries, at.shape_mean + m, precision(priors.log_shape_sd));
  }
}

}  // namespace

Eigen::SparseMatrix<double> expected_curvature(const BluntingDensity& density,
                                               std::span<const double> q) {
  const ParameterLayout& at = density.layout();
  const BluntingData& data = density.data();
  DensityLevels levels;
  const ParameterValues values = density.values_at(q, levels);
  Entries entries;
  add_priors(entries, density);
  add_scales(entries, density);
  for (std::size_t b = 0; b < at.block_count; ++b) {
    add_scattered_prior(entries, levels.block[b], at.block + b, {});
  }
  for (std::size_t s = 0; s < at.specimen_count; ++s) {
    add_scattered_prior(entries, levels.specimen[s], at.specimen + s, {});
  }
  for (std::size_t a = 0; at.has_shape_level && a < at.arms; ++a) {
    add_scattered_prior(
        entries, levels.shape[a], at.shape + a, {{{at.shape_mean + data.medium_of_arm[a], 1}}});
  }
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data.runs[r];
    const Dependence start_centre{{{at.start_mean + run.arm, 1}}};
    const Dependence half_centre = half_centre_dependence(at, levels, run);
    add_scattered_prior(entries, levels.run_start[r], at.run_start + r, start_centre);
    add_scattered_prior(entries, levels.run_half[r], at.run_half + r, half_centre);
    const std::array<Dependence, 3> seen{
        level_dependence(levels.run_start[r], at.run_start + r, start_centre),
        level_dependence(levels.run_half[r], at.run_half + r, half_centre),
        shape_dependence(density, levels, values, run.arm)};
    const RunInformation information = information_of(run, values, r);
    for (std::size_t i = 0; i < 3; ++i) {
      for (std::size_t j = 0; j < 3; ++j) {
        add_product(entries, seen[i], seen[j], information[i][j]);
      }
    }
  }
  const auto dimension = static_cast<int>(at.dimension);
  Eigen::SparseMatrix<double> curvature(dimension, dimension);
  curvature.setFromTriplets(entries.begin(), entries.end());
  return curvature;
}

}  // namespace keenfall::blunting
