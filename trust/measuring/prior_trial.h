// A trial drawn from the model itself: parameters from their priors with fixed centres, readings
// from the parameters. For simulation-based calibration.
//
// Priors also give trials that no bench sees, such as edges that are blunt after one cut. Trials
// are drawn anew until in every run the reading at 2 cuts is below twice the first and the last
// above 1.5 times the first. That looks at readings only, and ranks are uniform given any readings.
//
// Repeats are only drawn for Gaussian errors, where condensing them is exact; robust errors need a
// single reading at each checkpoint, which is what the robust model is about.
#pragma once

#include "blunting/inference/blunting_density.h"
#include "blunting/inference/model_spec.h"
#include "trials/trial.h"

#include <cstdint>
#include <string_view>

namespace keenfall::trust {

struct CalibrationDesign {
  std::string_view name;
  std::string_view about;
  blunting::ModelSpec spec;  // with centres
  int media = 1;
  int runs_each = 3;       // of each of two blades in each medium
  int repeats = 1;         // at each of 7 checkpoints
  int blocks = 0;          // that the runs of an arm are spread over in turn; 0: none
  int specimens_each = 0;  // of a blade, cut with in turn; 0: one
};

struct PriorTrial {
  trials::Trial trial;
  blunting::BluntingData data;
  blunting::ParameterValues truth;  // as the density numbers them
};

[[nodiscard]] PriorTrial prior_trial(const CalibrationDesign& design, std::uint64_t number);

}  // namespace keenfall::trust
