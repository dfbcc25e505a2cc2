#include "verdicts/factor_effects.h"

#include "numerics/summaries.h"
#include "verdicts/declared_factors.h"
#include "verdicts/simultaneous.h"

#include <algorithm>

namespace keenfall::verdicts {

namespace {

using blunting::Draws;

constexpr std::size_t kMostLevels = 12;
constexpr std::size_t kMostEffects = 60;

// The crossed table: its factors with the levels kept, and for each arm its level of each.
struct CrossedArms {
  std::vector<Factor> factors;
  std::vector<std::size_t> arms;
  std::vector<std::vector<std::size_t>> levels;  // [place among arms][factor]
  std::vector<Draws> lasting;                    // [place among arms]
};

Factor factor_of(const DeclaredFactor& declared, const std::vector<std::size_t>& kept) {
  Factor factor{.what = declared.what, .goes_with = declared.goes_with};
  for (const std::size_t level : kept) factor.levels.push_back(declared.levels[level]);
  return factor;
}

std::size_t place_in(const std::vector<std::size_t>& kept, std::size_t level) {
  return static_cast<std::size_t>(std::ranges::find(kept, level) - kept.begin());
}

std::optional<CrossedArms> crossed_arms(const std::vector<trials::Arm>& arms,
                                        const materials::ToldIn& told) {
  const DeclaredFactors declared = declared_factors(arms, told);
  if (declared.factors.size() < 2) return std::nullopt;
  const std::optional<CrossedTable> table = largest_crossed_table(declared.cells);
  if (!table) return std::nullopt;
  CrossedArms crossed{.arms = table->cells};
  crossed.levels.resize(crossed.arms.size());
  for (std::size_t f = 0; f < declared.factors.size(); ++f) {
    const std::vector<std::size_t>& kept = table->levels[f];
    if (kept.size() < 2) continue;
    crossed.factors.push_back(factor_of(declared.factors[f], kept));
    for (std::size_t i = 0; i < crossed.arms.size(); ++i) {
      crossed.levels[i].push_back(place_in(kept, declared.cells.levels[crossed.arms[i]][f]));
    }
  }
  return crossed;
}

// Blades of different known steels count by their steel; blades of one steel are averaged.
void turn_blades_into_steels(CrossedArms& crossed, const trials::Trial& trial) {
  const auto blade = std::ranges::find(crossed.factors, "blade", &Factor::what);
  if (blade == crossed.factors.end()) return;
  std::vector<std::string> steel_of_level;
  for (const std::string& name : blade->levels) {
    const trials::Blade* found = trials::find_blade(trial, name);
    if (found == nullptr || found->steel.empty()) return;
    steel_of_level.push_back(found->steel);
  }
  std::vector<std::string> steels;
  for (const std::string& steel : steel_of_level) {
    if (std::ranges::count(steels, steel) == 0) steels.push_back(steel);
  }
  if (steels.size() < 2) return;
  std::vector<std::size_t> place_of_level;
  for (const std::string& steel : steel_of_level) {
    place_of_level.push_back(
        static_cast<std::size_t>(std::ranges::find(steels, steel) - steels.begin()));
  }
  const auto f = static_cast<std::size_t>(blade - crossed.factors.begin());
  for (auto& levels : crossed.levels) levels[f] = place_of_level[levels[f]];
  blade->what = "steel";
  blade->levels = steels;
}

Draws mean_where(const CrossedArms& crossed, const auto& holds) {
  Draws sum(crossed.lasting.front().size());
  double count = 0;
  for (std::size_t i = 0; i < crossed.arms.size(); ++i) {
    if (!holds(crossed.levels[i])) continue;
    ++count;
    for (std::size_t d = 0; d < sum.size(); ++d) sum[d] += crossed.lasting[i][d];
  }
  for (double& draw : sum) draw /= count;
  return sum;
}

Draws log_effect(const CrossedArms& crossed, const FactorEffect& effect) {
  const auto at = [&](std::size_t level) {
    return mean_where(crossed, [&](const auto& levels) { return levels[effect.factor] == level; });
  };
  Draws ratio = at(effect.level);
  const Draws against = at(0);
  for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= against[d];
  return ratio;
}

Draws log_interaction(const CrossedArms& crossed, const FactorInteraction& both) {
  const auto at = [&](std::size_t level, std::size_t other) {
    return mean_where(crossed, [&](const auto& levels) {
      return levels[both.factor] == level && levels[both.other_factor] == other;
    });
  };
  Draws ratio = at(both.level, both.other_level);
  const Draws alone = at(both.level, 0);
  const Draws other_alone = at(0, both.other_level);
  const Draws neither = at(0, 0);
  for (std::size_t d = 0; d < ratio.size(); ++d) {
    ratio[d] += neither[d] - alone[d] - other_alone[d];
  }
  return ratio;
}

bool is_worked_out(const Factor& factor) { return factor.levels.size() <= kMostLevels; }

void list_effects(FactorEffects& found) {
  for (std::size_t f = 0; f < found.factors.size(); ++f) {
    if (!is_worked_out(found.factors[f])) {
      found.remarks.push_back("The " + found.factors[f].what + " has " +
                              std::to_string(found.factors[f].levels.size()) +
                              " levels, too many to give an effect of each; the comparisons have "
                              "them pair by pair.");
      continue;
    }
    for (std::size_t l = 1; l < found.factors[f].levels.size(); ++l) {
      found.effects.push_back({.factor = f, .level = l});
    }
  }
}

void list_interactions(FactorEffects& found) {
  std::vector<FactorInteraction> all;
  for (const FactorEffect& one : found.effects) {
    for (const FactorEffect& other : found.effects) {
      if (one.factor >= other.factor) continue;
      all.push_back({.factor = one.factor,
                     .level = one.level,
                     .other_factor = other.factor,
                     .other_level = other.level});
    }
  }
  if (found.effects.size() + all.size() <= kMostEffects) {
    found.interactions = std::move(all);
  } else {
    found.remarks.push_back("There are " + std::to_string(all.size()) +
                            " interactions of two factors, too many to give one by one.");
  }
}

void fill_in(FactorEffects& found, const CrossedArms& crossed, double margin) {
  std::vector<Draws> log_ratios;
  for (const FactorEffect& effect : found.effects) {
    log_ratios.push_back(log_effect(crossed, effect));
  }
  for (const FactorInteraction& both : found.interactions) {
    log_ratios.push_back(log_interaction(crossed, both));
  }
  if (log_ratios.empty()) return;
  const std::vector<RatioBounds> together = simultaneous_bounds(log_ratios);
  std::size_t next = 0;
  const auto fill = [&](auto& effect) {
    effect.ratio = numerics::exp_of(numerics::interval_of(log_ratios[next]));
    effect.simultaneous = together[next++];
    effect.verdict = verdict_on(effect.simultaneous, margin);
  };
  for (FactorEffect& effect : found.effects) fill(effect);
  for (FactorInteraction& both : found.interactions) fill(both);
}

}  // namespace

std::optional<FactorEffects> find_factor_effects(const trials::Trial& trial,
                                                 const ArmsLasting& lasting,
                                                 const FactorQuestion& question) {
  std::optional<CrossedArms> crossed = crossed_arms(lasting.arms, question.told_in);
  if (!crossed) return std::nullopt;
  turn_blades_into_steels(*crossed, trial);
  for (const std::size_t arm : crossed->arms) {
    crossed->lasting.push_back(lasting.log_cuts[arm]);
  }
  FactorEffects found{.at = lasting.at,
                      .factors = crossed->factors,
                      .arms = crossed->arms,
                      .remarks = lasting.remarks};
  for (std::size_t a = 0; a < lasting.arms.size(); ++a) {
    if (std::ranges::count(crossed->arms, a) == 0) found.arms_left_out.push_back(a);
  }
  list_effects(found);
  list_interactions(found);
  fill_in(found, *crossed, question.worth_it_margin);
  return found;
}

}  // namespace keenfall::verdicts
