// What the files of BluntingDensity share: the slopes a gradient is gathered in, and the bounds of
// plain's shapes. Private to them.
#pragma once

#include "blunting/inference/model_parts.h"

#include <vector>

namespace keenfall::blunting {

inline constexpr double kSmallestShape = 0.2;
inline constexpr double kLargestShape = 2.0;

// The information on a shape grows with the readings' only so far: a run of two readings leaves
// shape and half keenness to each other however sharp they are. Of the readings' factor h: 2 h / (1
// + h).
[[nodiscard]] inline double shape_factor(double h) { return 2 * h / (1 + h); }
[[nodiscard]] inline double log_shape_factor_by_log(double h) { return 1 / (1 + h); }

// Derivatives of the log density by the parameters in their own terms.
struct DensitySlopes {
  std::vector<double> start_mean;
  std::vector<double> half_mean;
  std::vector<double> log_shape;
  std::vector<double> run_start;
  std::vector<double> run_half;
  std::vector<double> block_effect;
  std::vector<double> specimen_effect;
  std::vector<double> log_run_scatter;
  std::vector<double> log_start_scatter;
  double log_reading_scatter = 0;
  double log_checkpoint_scatter = 0;
  double log_shape_scatter = 0;
  double log_block_scatter = 0;
  double log_specimen_scatter = 0;
  double start_effect = 0;
  double order_drift = 0;
  double log_information = 0;        // of the readings, in the anchors of runs and their means
  double log_shape_information = 0;  // in the anchors of shapes

  explicit DensitySlopes(const ParameterLayout& layout)
      : start_mean(layout.arms),
        half_mean(layout.arms),
        log_shape(layout.arms),
        run_start(layout.runs),
        run_half(layout.runs),
        block_effect(layout.block_count),
        specimen_effect(layout.specimen_count),
        log_run_scatter(layout.scatters),
        log_start_scatter(layout.scatters) {}
};

}  // namespace keenfall::blunting
