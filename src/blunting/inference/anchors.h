// Where the readings put every run and shape, by least squares: the anchors of the sampler.
//
// Each arm's shape is the one that fits its runs best; each run's start and half keenness are
// fitted at that shape, drawn towards their arm's means as a hierarchical model would, and the
// anchor is where the readings alone would put them from there (one Gauss-Newton step), with their
// information and with how they would move if the shape were another. A run that cannot be told
// from a level line has no anchor for its half keenness. Rough anchors make sampling
// slower, never wrong (anchored.h).
#pragma once

#include "blunting/inference/anchored.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/model_parts.h"
#include "blunting/inference/model_spec.h"

#include <vector>

namespace keenfall::blunting {

struct RunAnchor {
  Anchor start;               // log b0, half keenness left free
  Anchor half;                // log tau at a start of at_start and the arm's shape
  double at_start = 0;        // log b0
  double start_by_shape = 0;  // d log b0 / d log p
  double half_by_shape = 0;   // d log tau / d log p at a fixed log b0
  double half_by_start = 0;   // d log tau / d log b0 at a fixed shape
};

struct ArmAnchor {
  Anchor shape;      // log p
  MeanAnchor start;  // beta
  MeanAnchor half;   // mu
  double start_by_shape = 0;
  double half_by_shape = 0;
};

// Scatters that the least-squares curves suggest, to start the chains from.
struct RoughScatters {
  double start = 0.08;
  double run = 0.2;
  double reading = 0.1;
  double checkpoint = 0.03;
};

// Anchors know their information at one reading's variance only; at other scatters it scales.
struct ReadingPrecision {
  double reference_variance = 0.01;  // of one log reading, at which the anchors were computed
  double relative_variance = 1;      // of a checkpoint's centre, on average over the trial

  // Information at these scatters over that at the reference; and its logarithmic slopes.
  [[nodiscard]] double factor(double reading_scatter, double checkpoint_scatter) const;
  [[nodiscard]] double by_log_reading(double reading_scatter, double checkpoint_scatter) const;
  [[nodiscard]] double by_log_checkpoint(double reading_scatter, double checkpoint_scatter) const;
};

struct Anchors {
  ReadingPrecision precision;
  std::vector<RunAnchor> runs;
  std::vector<ArmAnchor> arms;
  std::vector<MeanAnchor> shape_means;  // per medium
  std::vector<Anchor> blocks;
  std::vector<Anchor> specimens;
  RoughScatters scatters;
};

[[nodiscard]] Anchors anchors_for(const BluntingData& data,
                                  const ModelSpec& spec,
                                  const ParameterLayout& layout);

}  // namespace keenfall::blunting
