// What the files of BluntingDensity share: the slopes a gradient is gathered in, and the bounds of
// plain's shapes. Private to them.
#pragma once

#include "blunting/inference/blunting_density.h"

#include <vector>

namespace keenfall::blunting {

inline constexpr double kSmallestShape = 0.2;
inline constexpr double kLargestShape = 2.0;

// Derivatives of the log density by the parameters in their own terms.
struct BluntingDensity::Slopes {
  std::vector<double> start_mean;
  std::vector<double> half_mean;
  std::vector<double> log_shape;
  std::vector<double> run_start;
  std::vector<double> run_half;
  std::vector<double> block_effect;
  std::vector<double> specimen_effect;
  std::vector<double> log_run_scatter;
  double log_start_scatter = 0;
  double log_reading_scatter = 0;
  double log_checkpoint_scatter = 0;
  double log_shape_scatter = 0;
  double log_block_scatter = 0;
  double log_specimen_scatter = 0;
  double log_information = 0;  // of the readings, in all anchors

  explicit Slopes(const ParameterLayout& layout)
      : start_mean(layout.arms),
        half_mean(layout.arms),
        log_shape(layout.arms),
        run_start(layout.runs),
        run_half(layout.runs),
        block_effect(layout.block_count),
        specimen_effect(layout.specimen_count),
        log_run_scatter(layout.scatters) {}
};

}  // namespace keenfall::blunting
