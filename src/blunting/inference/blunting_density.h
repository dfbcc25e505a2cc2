// The log posterior density of the blunting model, with its gradient, on the sampler's scale.
//
// Scales enter as logs; levels by anchored coordinates (anchored.h), the anchors shifting with the
// shape and the start as least squares says (anchors.h); plain's shapes by a logit between 0.2
// and 2. All Jacobians are included. Equations: model_spec.h. Repeats are condensed beforehand
// (condensed_repeats.h); for Gaussian errors without checkpoint error that is exact. The robust
// likelihood is Student's t with 4 degrees of freedom about a checkpoint's centre, with scale 0.831
// times the checkpoint's standard error, the scale at which it comes closest to a normal of that
// standard error (least Kullback-Leibler divergence).
#pragma once

#include "base/seed.h"
#include "blunting/inference/anchored.h"
#include "blunting/inference/anchors.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/density_slopes.h"
#include "blunting/inference/model_parts.h"
#include "blunting/inference/model_spec.h"
#include "blunting/inference/reading_terms.h"

#include <cstdint>
#include <span>
#include <vector>

namespace keenfall::blunting {

// The parameters in their own terms at one point of the sampler's space.
struct ParameterValues {
  std::vector<double> start_mean;  // per arm: beta
  std::vector<double> half_mean;   // per arm: mu
  std::vector<double> shape;       // per arm: p
  std::vector<double> start_scatter;
  std::vector<double> run_scatter;
  double reading_scatter = 0;
  double checkpoint_scatter = 0;  // 0 where the model has none
  double shape_scatter = 0;
  double block_scatter = 0;
  double specimen_scatter = 0;
  double start_effect = 0;              // lambda; 0 where the model has none
  double order_drift = 0;               // on log tau, from the first run to the last
  std::vector<double> shape_mean;       // per medium, of log p
  std::vector<double> block_effect;     // on log tau
  std::vector<double> specimen_effect;  // on log tau
  std::vector<double> run_start;        // per run: log b0
  std::vector<double> run_half;         // per run: log tau
};

class BluntingDensity {
 public:
  // data must outlive the density.
  BluntingDensity(const BluntingData& data, const ModelSpec& spec);

  [[nodiscard]] const ParameterLayout& layout() const { return layout_; }
  [[nodiscard]] const ModelParts& parts() const { return parts_; }

  // Log density up to a constant; writes the gradient. Both spans have layout().dimension elements.
  [[nodiscard]] double operator()(std::span<const double> q, std::span<double> gradient);

  [[nodiscard]] ParameterValues values_at(std::span<const double> q) const;

  // A start for a chain: levels as wide of the anchors as the posterior is, scales near what the
  // least-squares curves suggest.
  [[nodiscard]] std::vector<double> start_for(base::Seed seed, std::uint64_t chain) const;

  // About the posterior variance of every coordinate, for the sampler to begin with: anchored
  // levels have 1, log scales what so many runs and readings leave them.
  [[nodiscard]] std::vector<double> rough_variances() const;

 private:
  // The levels as they are sampled.
  struct Levels {
    std::vector<AnchoredMean> start_mean;
    std::vector<AnchoredMean> half_mean;
    std::vector<AnchoredLevel> shape;      // empty for plain
    std::vector<AnchoredMean> shape_mean;  // empty for plain
    std::vector<AnchoredLevel> block;
    std::vector<AnchoredLevel> specimen;
    std::vector<AnchoredLevel> run_start;
    std::vector<AnchoredLevel> run_half;
    double information_factor = 1;  // of the readings', over the anchors' own
  };

  void unpack(std::span<const double> q, ParameterValues& values, Levels& levels) const;
  void unpack_scales(std::span<const double> q, ParameterValues& values) const;
  void unpack_shapes(std::span<const double> q, ParameterValues& values, Levels& levels) const;
  void unpack_means(std::span<const double> q, ParameterValues& values, Levels& levels) const;
  void unpack_groups(std::span<const double> q, ParameterValues& values, Levels& levels) const;
  void unpack_runs(std::span<const double> q, ParameterValues& values, Levels& levels) const;
  [[nodiscard]] double run_centre(std::size_t run, const ParameterValues& values) const;
  [[nodiscard]] std::size_t scatter_of(std::size_t medium) const;

  [[nodiscard]] ReadingVariances reading_variances() const;
  [[nodiscard]] double add_readings(DensitySlopes& slopes);
  void place_curves();
  void add_censored(const ReadingVariances& variances, ReadingLikelihood& found);
  void add_run_slopes(DensitySlopes& slopes);
  [[nodiscard]] double add_runs(std::span<double> gradient, DensitySlopes& slopes) const;
  [[nodiscard]] double add_groups(std::span<double> gradient, DensitySlopes& slopes) const;
  [[nodiscard]] double add_means(std::span<double> gradient, DensitySlopes& slopes) const;
  [[nodiscard]] double add_shapes(std::span<const double> q,
                                  std::span<double> gradient,
                                  DensitySlopes& slopes) const;
  [[nodiscard]] double add_scales(std::span<double> gradient, const DensitySlopes& slopes) const;
  [[nodiscard]] double add_covariates(std::span<const double> q,
                                      std::span<double> gradient,
                                      const DensitySlopes& slopes) const;

  const BluntingData& data_;
  ModelSpec spec_;
  ModelParts parts_;
  ParameterLayout layout_;
  Anchors anchors_;
  PriorCentres centres_;
  DensitySlopes empty_slopes_;
  ReadingTerms terms_;
  ParameterValues values_;  // scratch, as is the rest
  Levels levels_;
  DensitySlopes slopes_;
};

}  // namespace keenfall::blunting
