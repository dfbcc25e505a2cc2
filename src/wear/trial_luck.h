// The luck of a simulated trial's runs: a seed of its own for every set of settings.
//
// Trials that differ in anything but their name draw different luck under one seed, so that two of
// them in one notebook are two trials and not the same hits twice. The same settings and seed are
// the same trial. What is shared on purpose is told on docs/methods/apex.md.
#pragma once

#include "base/seed.h"
#include "wear/simulated_trial.h"

namespace keenfall::wear {

[[nodiscard]] base::Seed luck_of(const TrialPlan& plan);

}  // namespace keenfall::wear
