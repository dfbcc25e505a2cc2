// For tests: a fit made by hand. Arms with given medians and errors of log half keenness, drawn
// independently and normally; no sampler behind it.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "numerics/random.h"

#include <cstdint>
#include <vector>

namespace keenfall::verdicts::testing {

struct MadeArm {
  trials::Arm arm;
  double log_half_keenness = 0;
  double error = 0.1;  // sd of its draws
};

struct MadeFit {
  trials::Trial trial;
  blunting::BluntingData data;
  blunting::BluntingFit fit;
};

inline MadeFit made_fit(const std::vector<MadeArm>& arms, std::uint64_t seed) {
  constexpr std::size_t kDraws = 4000;
  MadeFit made{.data = {.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}};
  made.fit.chains = 4;
  made.fit.draws_per_chain = kDraws / 4;
  numerics::RandomStream random({seed}, 0);
  for (const MadeArm& arm : arms) {
    const std::string words = arm.arm.medium.name + in_words(arm.arm.method);
    std::size_t medium = 0;
    while (medium < made.data.media.size() && made.data.media[medium] != words) ++medium;
    if (medium == made.data.media.size()) made.data.media.push_back(words);
    if (trials::find_blade(made.trial, arm.arm.blade) == nullptr) {
      made.trial.blades.push_back({.name = arm.arm.blade});
    }
    made.data.arms.push_back(arm.arm);
    made.data.medium_of_arm.push_back(medium);
    blunting::ArmDraws draws;
    for (std::size_t d = 0; d < kDraws; ++d) {
      draws.log_start.push_back(4.6);
      draws.log_half_keenness.push_back(arm.log_half_keenness + arm.error * random.normal());
      draws.shape.push_back(0.7);
    }
    draws.log_half_keenness_steel = draws.log_half_keenness;
    made.fit.arms.push_back(std::move(draws));
  }
  return made;
}

}  // namespace keenfall::verdicts::testing
