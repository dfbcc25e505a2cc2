#include "planning/shuffled_order.h"

#include "numerics/random.h"

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <optional>
#include <string>
#include <utility>

namespace keenfall::planning {

namespace {

using trials::Plan;
using trials::PlannedRun;

// Block b is shuffled by this stream of the plan's seed, plus b.
constexpr std::uint64_t kFirstBlockStream = 7000;

base::Problem no_order(base::ProblemKind kind,
                       const std::string& sentence,
                       const char* field,
                       const std::string& accepted) {
  return {.kind = kind, .sentence = sentence, .place = {.column = field}, .accepted = accepted};
}

std::optional<base::Problem> why_no_order(const Plan& plan) {
  if (plan.arms.empty()) {
    return no_order(base::ProblemKind::missing,
                    "There is nothing to put in order: the plan has no arms yet.",
                    "arms",
                    "one arm or more");
  }
  if (plan.runs_each < 1 || plan.runs_each > kMostRunsEach ||
      plan.arms.size() * static_cast<std::size_t>(plan.runs_each) > kMostRuns) {
    return no_order(base::ProblemKind::bad_value,
                    std::to_string(plan.runs_each) + " runs of each of " +
                        std::to_string(plan.arms.size()) + " arms cannot be put in order.",
                    "runs_each",
                    "1 to " + std::to_string(kMostRunsEach) + " runs each, and at most " +
                        std::to_string(kMostRuns) + " in all");
  }
  if (!plan.house_blade.empty() &&
      std::ranges::count(plan.arms, plan.house_blade, &trials::PlannedArm::blade) == 0) {
    return no_order(
        base::ProblemKind::missing,
        "The house blade " + plan.house_blade + " is cut with in every block, but no arm has it.",
        "house_blade",
        "a blade that an arm has, or none");
  }
  return std::nullopt;
}

std::string piece_of(const std::string& blade, int block, std::span<const trials::Blade> blades) {
  const auto found = std::ranges::find(blades, blade, &trials::Blade::name);
  if (found == blades.end() || found->specimens.empty()) return {};
  const auto turn = static_cast<std::size_t>(block - 1) % found->specimens.size();
  return found->specimens[turn].name;
}

// Fisher & Yates: every order equally likely.
std::vector<std::size_t> shuffled_arms(std::size_t arms, base::Seed seed, int block) {
  numerics::RandomStream random(seed, kFirstBlockStream + static_cast<std::uint64_t>(block));
  std::vector<std::size_t> order(arms);
  std::iota(order.begin(), order.end(), std::size_t{0});
  for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[random.below(i)]);
  return order;
}

}  // namespace

base::Result<std::vector<PlannedRun>> shuffled_order(const Plan& plan,
                                                     std::span<const trials::Blade> blades) {
  if (auto problem = why_no_order(plan)) return base::failed(*std::move(problem));
  std::vector<PlannedRun> runs;
  for (int block = 1; block <= plan.runs_each; ++block) {
    for (const std::size_t arm : shuffled_arms(plan.arms.size(), plan.order_seed, block)) {
      runs.push_back({.arm = arm,
                      .specimen = piece_of(plan.arms[arm].blade, block, blades),
                      .block = block,
                      .order = static_cast<int>(runs.size()) + 1});
    }
  }
  return runs;
}

}  // namespace keenfall::planning
