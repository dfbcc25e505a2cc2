// The log posterior density of the blunting model, with its gradient, on the sampler's scale.
//
// Scales enter as logs, so their Jacobians are included; shapes as logs (shared) or as a logit
// between 0.2 and 2 (plain). Equations: model_spec.h; parametrisation of runs and shapes:
// scattered.h. Repeats are condensed beforehand (condensed_repeats.h); for Gaussian errors without
// checkpoint error that is exact. The robust likelihood is Student's t with 4 degrees of freedom
// about a checkpoint's centre, with scale 0.831 times the checkpoint's standard error, the scale at
// which it comes closest to a normal of that standard error (least Kullback-Leibler divergence).
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/model_parts.h"
#include "blunting/inference/model_spec.h"
#include "blunting/inference/scattered.h"

#include <span>
#include <vector>

namespace keenfall::blunting {

// How centred each scattered level is sampled; see scattered.h.
struct Centring {
  std::vector<double> run_start;  // one per run
  std::vector<double> run_half;   // one per run
  std::vector<double> shape;      // one per arm; unused by plain
  double group = 0.4;             // of block and specimen effects
};

// The parameters in their own terms at one point of the sampler's space.
struct ParameterValues {
  std::vector<double> start_mean;  // per arm: beta
  std::vector<double> half_mean;   // per arm: mu
  std::vector<double> shape;       // per arm: p
  double start_scatter = 0;
  std::vector<double> run_scatter;
  double reading_scatter = 0;
  double checkpoint_scatter = 0;  // 0 where the model has none
  double shape_scatter = 0;
  double block_scatter = 0;
  double specimen_scatter = 0;
  std::vector<double> shape_mean;       // per medium, of log p
  std::vector<double> block_effect;     // on log tau
  std::vector<double> specimen_effect;  // on log tau
  std::vector<double> run_start;        // per run: log b0
  std::vector<double> run_half;         // per run: log tau
};

// The scattered levels as they are sampled.
struct DensityLevels {
  std::vector<Scattered> run_start;
  std::vector<Scattered> run_half;
  std::vector<Scattered> shape;  // empty for plain
  std::vector<Scattered> block;
  std::vector<Scattered> specimen;
};

class BluntingDensity {
 public:
  // data must outlive the density.
  BluntingDensity(const BluntingData& data, const ModelSpec& spec, Centring centring);

  [[nodiscard]] const ParameterLayout& layout() const { return layout_; }
  [[nodiscard]] const ModelParts& parts() const { return parts_; }
  [[nodiscard]] const ModelSpec& spec() const { return spec_; }
  [[nodiscard]] const BluntingData& data() const { return data_; }

  // Log density up to a constant; writes the gradient. Both spans have layout().dimension elements.
  [[nodiscard]] double operator()(std::span<const double> q, std::span<double> gradient);

  [[nodiscard]] ParameterValues values_at(std::span<const double> q) const;
  [[nodiscard]] ParameterValues values_at(std::span<const double> q, DensityLevels& levels) const;

 private:
  struct Slopes;  // derivatives by the parameters in their own terms

  void unpack(std::span<const double> q, ParameterValues& values, DensityLevels& levels) const;
  void unpack_shapes(std::span<const double> q,
                     ParameterValues& values,
                     DensityLevels& levels) const;
  void unpack_runs(std::span<const double> q, ParameterValues& values, DensityLevels& levels) const;
  [[nodiscard]] double run_centre(const RunData& run, const ParameterValues& values) const;
  [[nodiscard]] std::size_t scatter_of(const RunData& run) const;
  [[nodiscard]] double add_readings(Slopes& slopes) const;
  [[nodiscard]] double add_run_readings(std::size_t run, Slopes& slopes) const;
  [[nodiscard]] double add_runs(std::span<double> gradient, Slopes& slopes) const;
  [[nodiscard]] double add_shapes(std::span<double> gradient, Slopes& slopes) const;
  [[nodiscard]] double add_scales(std::span<double> gradient, const Slopes& slopes) const;
  [[nodiscard]] double add_means(std::span<double> gradient, const Slopes& slopes) const;
  [[nodiscard]] double add_groups(std::span<double> gradient, const Slopes& slopes) const;

  const BluntingData& data_;
  ModelSpec spec_;
  ModelParts parts_;
  ParameterLayout layout_;
  Centring centring_;
  PriorCentres centres_;
  ParameterValues values_;  // scratch, as is the next
  DensityLevels levels_;
};

}  // namespace keenfall::blunting
