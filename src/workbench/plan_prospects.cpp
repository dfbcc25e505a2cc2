#include "workbench/plan_prospects.h"

#include "base/plain_number.h"
#include "planning/arm_words.h"
#include "planning/chance_words.h"
#include "planning/rough_chances.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace keenfall::workbench {

namespace {

using planning::PlanChances;
using planning::RunsNeeded;

planning::ChancesAsked asked_of(const PlanInHand& in_hand, std::size_t cutting) {
  return {.cutting = cutting,
          .worth_it_margin = in_hand.worth_it_margin,
          .true_ratios =
              planning::usual_ratios(in_hand.worth_it_margin, in_hand.assumptions.true_ratio),
          .seed = in_hand.plan.order_seed,
          .kind = in_hand.kind,
          .blades = in_hand.blades};
}

// "22 %" of a log sd.
std::string percent(double log_sd) {
  return base::plain_number(std::round(100 * std::expm1(log_sd))) + " %";
}

// The arms of one cutting, by their words.
std::vector<std::string> arms_in(const trials::Plan& plan, std::size_t cutting) {
  std::vector<trials::PlannedArm> arms;
  std::ranges::copy_if(plan.arms, std::back_inserter(arms), [cutting](const auto& arm) {
    return arm.cutting == cutting;
  });
  return planning::words_of_arms(arms);
}

std::vector<std::string> what_is_assumed(const PlanInHand& in_hand) {
  std::vector<std::string> sentences;
  const std::vector<std::string> words = planning::words_of_cuttings(in_hand.plan.cuttings);
  for (std::size_t c = 0; c < words.size(); ++c) {
    const planning::ExpectedCutting& expected = in_hand.assumptions.cuttings[c];
    sentences.push_back(
        "In " + words[c] + " edges are taken to be half as keen after about " +
        so_many(base::with_figures(expected.half_keenness_cuts, 2), in_hand.plan.counted) +
        ", and runs to scatter by " + percent(expected.run_log_sd) + " (a log sd of " +
        base::plain_number(expected.run_log_sd) + ").");
  }
  sentences.push_back("A reading is taken to scatter by " +
                      percent(in_hand.assumptions.reading_log_sd) +
                      ". Not to act on a difference is taken to mean a ratio of lasting below " +
                      base::plain_number(in_hand.worth_it_margin) + ".");
  return sentences;
}

bool some_lie_between(const PlanInHand& in_hand) {
  for (std::size_t c = 0; c < in_hand.plan.cuttings.size(); ++c) {
    if (arms_in(in_hand.plan, c).size() > 2) return true;
  }
  return false;
}

// How it was worked out; trials: imagined, or none.
std::vector<std::string> how_it_was_found(const PlanInHand& in_hand, int trials) {
  const trials::Plan& plan = in_hand.plan;
  const bool has_looks = !plan.looks.empty() && plan.looks.front() < plan.runs_each;
  const bool has_more_arms = some_lie_between(in_hand);
  std::vector<std::string> sentences;
  if (has_more_arms) {
    sentences.emplace_back(
        "Asked about is the first arm of a medium against the last; those between are taken to "
        "last between.");
  }
  if (trials > 0) {
    sentences.push_back("The plan was cut " + std::to_string(trials) +
                        " times in imagination for each line, in its own order, and each such "
                        "trial judged by the quick engine.");
    return sentences;
  }
  sentences.emplace_back(
      "Worked out at once for two arms whose runs scatter so as they are read. That starts, blocks "
      "and pieces scatter too is left out.");
  if (has_more_arms) {
    sentences.emplace_back(
        "Left out is also that all arms of a medium are compared together, which settles less.");
  }
  if (has_looks) sentences.emplace_back("Left out are also the looks before the end.");
  return sentences;
}

// The chances where the truth is one of these.
PlanChances only_at(const PlanChances& chances, const std::vector<double>& true_ratios) {
  PlanChances only = chances;
  std::erase_if(only.at, [&true_ratios](const planning::ChancesAt& at) {
    return std::ranges::count(true_ratios, at.true_ratio) == 0;
  });
  return only;
}

struct FoundOut {
  PlanChances chances;
  RunsNeeded needed;
};
// Of one cutting of the plan.
using FindOut = std::function<base::Result<FoundOut>(std::size_t cutting)>;

wire::ChancesInCutting in_cutting(const PlanInHand& in_hand, std::size_t cutting, FoundOut found) {
  const trials::Plan& plan = in_hand.plan;
  const std::vector<std::string> arms = arms_in(plan, cutting);
  wire::ChancesInCutting told{.cutting = cutting,
                              .words = planning::words_of_cuttings(plan.cuttings)[cutting],
                              .first_arm = arms.front(),
                              .last_arm = arms.back(),
                              .chances = std::move(found.chances),
                              .runs_needed = found.needed};
  told.sentence = in_words(only_at(told.chances, {1, in_hand.assumptions.true_ratio}));
  told.runs_needed_words = in_words(told.runs_needed);
  return told;
}

// In one breath: of several cuttings each only where the truth is as assumed.
std::string sentence_of_all(const std::vector<wire::ChancesInCutting>& cuttings,
                            double true_ratio) {
  if (cuttings.size() == 1) return cuttings.front().sentence;
  std::string words;
  for (const wire::ChancesInCutting& in : cuttings) {
    words +=
        (words.empty() ? "" : " ") + in_words(only_at(in.chances, {true_ratio}), "In " + in.words);
  }
  return words;
}

base::Result<wire::ChancesTold> told_of_all(const PlanInHand& in_hand,
                                            int trials,
                                            const FindOut& find_out) {
  wire::ChancesTold told{.trials = trials,
                         .seed = in_hand.plan.order_seed,
                         .worth_it_margin = in_hand.worth_it_margin,
                         .assumptions = in_hand.assumptions};
  if (in_hand.plan.arms.size() == 1) {
    told.sentence =
        "One arm is compared with nothing: its runs tell how much your own runs scatter, on which "
        "every later plan can rest.";
    return told;
  }
  for (std::size_t c = 0; c < in_hand.plan.cuttings.size(); ++c) {
    auto found = find_out(c);
    if (!found) return base::failed(std::move(found.error()));
    told.cuttings.push_back(in_cutting(in_hand, c, *std::move(found)));
  }
  told.sentence = sentence_of_all(told.cuttings, in_hand.assumptions.true_ratio);
  told.rests_on = what_is_assumed(in_hand);
  for (std::string& sentence : how_it_was_found(in_hand, trials)) {
    told.rests_on.push_back(std::move(sentence));
  }
  return told;
}

// Of work that is some of the whole.
base::ProgressReport between(double from, double to, const base::ProgressReport& report) {
  return [from, to, &report](const base::Progress& progress) {
    return report(
        {.fraction_done = from + progress.fraction_done * (to - from), .stage = progress.stage});
  };
}

}  // namespace

wire::CostTold cost_told(const PlanInHand& in_hand) {
  return {.cost = planning::cost_of(in_hand.plan, in_hand.assumptions, in_hand.bench_times),
          .counted = in_hand.plan.counted};
}

base::Result<wire::ChancesTold> rough_chances_told(const PlanInHand& in_hand) {
  constexpr int kNoTrials = 0;
  return told_of_all(in_hand, kNoTrials, [&in_hand](std::size_t cutting) -> base::Result<FoundOut> {
    const planning::ChancesAsked asked = asked_of(in_hand, cutting);
    auto chances = planning::rough_chances(in_hand.plan, in_hand.assumptions, asked);
    if (!chances) return base::failed(std::move(chances.error()));
    auto needed = planning::rough_runs_needed(
        in_hand.plan, in_hand.assumptions, asked, in_hand.assumptions.true_ratio);
    if (!needed) return base::failed(std::move(needed.error()));
    return FoundOut{.chances = *std::move(chances), .needed = *needed};
  });
}

base::Result<wire::ChancesTold> chances_told(const PlanInHand& in_hand,
                                             const TrialsImagined& trials,
                                             const base::Executor& execute,
                                             const base::ProgressReport& report) {
  constexpr double kPartOfChances = 0.6;  // of the time: seen, some half to three quarters
  const double part =
      1 / static_cast<double>(std::max<std::size_t>(in_hand.plan.cuttings.size(), 1));
  const auto find_out = [&](std::size_t cutting) -> base::Result<FoundOut> {
    const double begun = part * static_cast<double>(cutting);
    const double with_chances = begun + kPartOfChances * part;
    planning::ChancesAsked asked = asked_of(in_hand, cutting);
    asked.trials = trials.for_chances;
    auto chances = planning::chances_of(
        in_hand.plan, in_hand.assumptions, asked, execute, between(begun, with_chances, report));
    if (!chances) return base::failed(std::move(chances.error()));
    asked.trials = trials.for_runs_needed;
    auto needed = planning::runs_needed(in_hand.plan,
                                        in_hand.assumptions,
                                        asked,
                                        in_hand.assumptions.true_ratio,
                                        execute,
                                        between(with_chances, begun + part, report));
    if (!needed) return base::failed(std::move(needed.error()));
    return FoundOut{.chances = *std::move(chances), .needed = *needed};
  };
  return told_of_all(in_hand, trials.for_chances, find_out);
}

}  // namespace keenfall::workbench
