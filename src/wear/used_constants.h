// Every constant that a simulation used: what somebody needs to repeat it, and to doubt it.
//
// Each with its figure, its range where it has one, its source and its mark. Steels, media and
// finishes in the order asked for, each once.
#pragma once

#include "materials/uncertain_constant.h"
#include "wear/edge_story.h"
#include "wear/predicted_ratio.h"
#include "wear/simulated_trial.h"

#include <string>
#include <vector>

namespace keenfall::wear {

struct NamedConstants {
  std::string name;
  std::vector<materials::UncertainConstant> constants;
};

struct UsedConstants {
  std::vector<NamedConstants> steels;
  std::vector<NamedConstants> media;
  std::vector<NamedConstants> finishes;
  std::vector<materials::UncertainConstant> model;
};

// With what turns a simulated bluntness into the trial's unit.
[[nodiscard]] UsedConstants used_constants(const TrialPlan& plan);

// With those of the force.
[[nodiscard]] UsedConstants used_constants(const EdgeQuestion& question);

[[nodiscard]] UsedConstants used_constants(const PredictionAsked& asked);

}  // namespace keenfall::wear
