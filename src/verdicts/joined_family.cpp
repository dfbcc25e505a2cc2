#include "verdicts/joined_family.h"

#include "base/require.h"
#include "verdicts/compare.h"
#include "verdicts/lasting.h"

#include <algorithm>
#include <iterator>

namespace keenfall::verdicts {

namespace {

using blunting::Draws;

void choose_draws(LastingArm& arm, std::size_t count, std::size_t turned_by) {
  arm.log_cuts = evenly_chosen(arm.log_cuts, count, turned_by);
  if (arm.log_cuts_steel.empty()) return;
  arm.log_cuts_steel = evenly_chosen(arm.log_cuts_steel, count, turned_by);
}

// Past the chain that shares its random numbers with the other fit's.
std::size_t one_chain_on(const blunting::TimeFit& fit) {
  const std::size_t draws = fit.chains * fit.draws_per_chain;
  return fit.chains > 1 ? fit.draws_per_chain : draws / 2;
}

}  // namespace

Draws evenly_chosen(const Draws& draws, std::size_t count, std::size_t turned_by) {
  base::require(!draws.empty(), "there are draws to choose from");
  Draws chosen;
  chosen.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    chosen.push_back(draws[(i * draws.size() / count + turned_by) % draws.size()]);
  }
  return chosen;
}

JoinedFamily joined_family(const ReadEdges& read,
                           const TestedEdges& tested,
                           const ReadAndTestedArms& arms,
                           double level,
                           std::optional<ClaimAbout> claim) {
  const At at{.what = ComparedAt::level, .level = level};
  JoinedFamily joined{.family = family_of_curves(read.data, read.fit, arms.read, at, claim)};
  const std::size_t medium = tested.data.groups.medium_of_arm.at(arms.tested.front());
  Family tests = family_of_tests(tested.judgement, tested.data, tested.fit, medium, claim);
  std::erase_if(tests.arms, [&arms](const LastingArm& arm) {
    return std::ranges::count(arms.tested, arm.index) == 0;
  });
  Family& family = joined.family;
  family.batches = 2 * std::min(read.fit.chains, tested.fit.chains);
  const std::size_t draws =
      std::min(family.arms.front().log_cuts.size(), tests.arms.front().log_cuts.size());
  for (LastingArm& arm : family.arms) choose_draws(arm, draws, 0);
  for (LastingArm& arm : tests.arms) choose_draws(arm, draws, one_chain_on(tested.fit));
  const std::size_t read_arms = family.arms.size();
  std::ranges::move(tests.arms, std::back_inserter(family.arms));
  for (std::size_t i = 0; i < family.arms.size(); ++i) family.arms[i].index = i;
  for (std::size_t one = 0; one < read_arms; ++one) {
    for (std::size_t other = read_arms; other < family.arms.size(); ++other) {
      joined.pairs.push_back({.one = one, .other = other});
    }
  }
  return joined;
}

Family with_quick_curves(const JoinedFamily& joined,
                         const ReadEdges& read,
                         const ReadAndTestedArms& arms,
                         const std::vector<blunting::ArmDraws>& quick) {
  Family family = joined.family;
  for (std::size_t i = 0; i < family.arms.size(); ++i) {
    LastingArm& arm = family.arms[i];
    if (i >= arms.read.size()) {
      choose_draws(arm, quick.front().shape.size(), 0);
      continue;
    }
    const blunting::ArmDraws& draws = quick.at(arms.read[i]);
    arm.log_cuts = log_cuts_until(read.data, draws, family.at, ClaimAbout::these_blades);
    arm.log_cuts_steel = log_cuts_until(read.data, draws, family.at, ClaimAbout::the_steels);
  }
  return family;
}

}  // namespace keenfall::verdicts
