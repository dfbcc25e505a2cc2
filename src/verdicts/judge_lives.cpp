#include "verdicts/judge_lives.h"

#include "base/require.h"
#include "blunting/times/quick_times.h"
#include "numerics/summaries.h"
#include "verdicts/arms_lasting.h"
#include "verdicts/arms_not_judged.h"
#include "verdicts/factor_effects.h"
#include "verdicts/family.h"
#include "verdicts/fit_report.h"
#include "verdicts/media_compared.h"
#include "verdicts/second_opinion.h"
#include "verdicts/what_was_seen.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace keenfall::verdicts {

namespace {

using blunting::TimeData;
using blunting::TimeFit;
using blunting::TimeRun;

double last_known_cuts(const TimeRun& run) { return run.failed_by_cuts.value_or(run.lasted_cuts); }

trials::ReadingKind kind_of_lives(const TimeData& data, const trials::Counted& counted) {
  if (data.test.rung) return *trials::find_reading_kind("pass_ladder");
  return {.name = std::string(kEdgeLives),
          .words = "edge life by a pass-or-fail test",
          .unit = counted.many,
          .keener_when = trials::KeenerWhen::higher,
          .use = trials::ReadingUse::evidence,
          .zero = trials::ZeroReading::honest};
}

TestJudged test_judged(const TimeData& data) {
  return {.words = data.test.rung ? "pass ladder" : data.test.words,
          .rung = data.test.rung,
          .level = data.level};
}

ArmResult tested_arm(const TimeData& data, const TimeFit& fit, std::size_t arm) {
  ArmResult result{.arm = data.groups.arms[arm]};
  CutsToLevel until{.cuts = numerics::exp_of(numerics::interval_of(fit.arms[arm].log_cuts))};
  std::set<std::size_t> pieces;
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    if (data.groups.runs[r].arm != arm) continue;
    ++result.runs;
    if (data.groups.runs[r].specimen) pieces.insert(*data.groups.runs[r].specimen);
    if (data.runs[r].failed_by_cuts) ++until.runs_that_reached;
    result.longest_run_cuts = std::max(result.longest_run_cuts, last_known_cuts(data.runs[r]));
  }
  result.specimens = std::max(1, static_cast<int>(pieces.size()));
  until.beyond_what_was_cut = until.cuts.median > result.longest_run_cuts;
  result.test = until;
  result.run_scatter_log_sd =
      numerics::interval_of(fit.run_scatter[data.groups.medium_of_arm[arm]]);
  return result;
}

std::vector<RunResult> tested_runs(const trials::Trial& trial, const TimeData& data) {
  std::vector<RunResult> results;
  for (const trials::Run& run : trial.runs) {
    const auto arm = std::ranges::find(data.groups.arms, run.arm);
    results.push_back({.arm = static_cast<std::size_t>(arm - data.groups.arms.begin()),
                       .run = results.size(),
                       .name = run.name,
                       .specimen = run.specimen,
                       .block = run.block,
                       .order = run.order,
                       .remarks = recorded_remarks(run, trial.counted)});
  }
  for (const blunting::RunAside& aside : data.set_aside) {
    results[aside.run].not_used_because = aside.because;
  }
  for (const TimeRun& run : data.runs) {
    RunResult& result = results[run.run];
    result.lasted_cuts = run.lasted_cuts;
    result.failed_by_cuts = run.failed_by_cuts;
    result.last_cuts = last_known_cuts(run);
    result.remarks.insert(result.remarks.end(), run.remarks.begin(), run.remarks.end());
  }
  return results;
}

Family with_draws(Family family, const std::vector<blunting::ArmTimes>& times) {
  for (LastingArm& arm : family.arms) {
    arm.log_cuts = times[arm.index].log_cuts;
    arm.log_cuts_steel = times[arm.index].log_cuts_steel;
  }
  return family;
}

std::vector<Comparison> compare_tested(const trials::Trial& trial,
                                       const Judgement& judgement,
                                       const TimeData& data,
                                       const TimeFit& fit,
                                       const LivesQuestion& question,
                                       base::Seed seed) {
  std::vector<Comparison> comparisons;
  const auto quick = blunting::quick_times(data);
  for (std::size_t medium = 0; medium < data.groups.media.size(); ++medium) {
    const Family family = family_of_tests(judgement, data, fit, medium, question.claim);
    std::vector<Comparison> pairs = compare_family(trial,
                                                   family,
                                                   all_pairs(family.arms.size()),
                                                   {.worth_it_margin = question.worth_it_margin,
                                                    .looks = question.looks,
                                                    .seed = seed,
                                                    .told_in = question.told_in});
    add_second_opinions(pairs, with_draws(family, quick), question.worth_it_margin);
    std::ranges::move(pairs, std::back_inserter(comparisons));
  }
  return comparisons;
}

void add_cuts_across(Judgement& judgement) {
  if (!judgement.media) return;
  for (MediumOfTable& medium : judgement.media->media) {
    for (const std::size_t arm : medium.arms) medium.lasting.push_back(*judgement.arms[arm].test);
  }
}

std::vector<std::string> parts_of_times(const TimeData& data) {
  std::vector<std::string> parts{"log-logistic times known by intervals",
                                 "a run-to-run scatter of its own in each medium"};
  if (data.groups.block_count > 0) parts.push_back("blocks");
  if (data.groups.specimen_count > 0) parts.push_back("specimens");
  return parts;
}

std::vector<std::string> not_told_by_tests(const trials::Trial& trial, const Judgement& judgement) {
  std::vector<std::string> sentences;
  for (const ArmResult& arm : judgement.arms) {
    const std::string words = arm.arm.blade + " on " + arm.arm.medium.name;
    if (arm.runs == 1) {
      sentences.push_back(
          "One run of " + words + ": how much it scatters from run to run is borrowed from " +
          (judgement.arms.size() > 1 ? "the other arms." : "common experience, not seen here."));
    }
    if (const auto sentence = known_from_below(arm)) sentences.push_back(*sentence);
  }
  if (judgement.comparisons.empty() && judgement.fit.usable) {
    sentences.push_back(
        "There is nothing to compare: no two arms were cut in one medium by one method.");
  }
  const bool any_block =
      std::ranges::any_of(trial.runs, [](const trials::Run& run) { return !run.block.empty(); });
  if (!any_block && judgement.runs.size() > 2) {
    sentences.push_back(
        "No blocks are recorded: a drift of day, lot or stone cannot be told from a difference of "
        "blades.");
  }
  return sentences;
}

}  // namespace

std::optional<std::string> known_from_below(const ArmResult& arm) {
  if (!arm.test || arm.test->runs_that_reached > 0) return std::nullopt;
  return "No run of " + arm.arm.blade + " on " + arm.arm.medium.name +
         " was seen to fail, so how long it lasts is known from below only: how much longer is not "
         "seen here.";
}

Family family_of_tests(const Judgement& judgement,
                       const TimeData& data,
                       const TimeFit& fit,
                       std::size_t medium,
                       std::optional<ClaimAbout> claim) {
  Family family{.at = {.what = ComparedAt::test}, .batches = 2 * fit.chains};
  for (std::size_t a = 0; a < data.groups.arms.size(); ++a) {
    if (data.groups.medium_of_arm[a] != medium) continue;
    const ArmResult& arm = judgement.arms[a];
    family.arms.push_back({.index = a,
                           .arm = arm.arm,
                           .runs = arm.runs,
                           .carries_steel = claim != ClaimAbout::these_blades && arm.specimens > 1,
                           .log_cuts = fit.arms[a].log_cuts,
                           .log_cuts_steel = fit.arms[a].log_cuts_steel,
                           .beyond_what_was_cut = arm.test->beyond_what_was_cut});
  }
  return family;
}

Judgement judge_lives(const trials::Trial& trial,
                      const TimeData& data,
                      const TimeFit& fit,
                      const LivesQuestion& question,
                      base::Seed seed) {
  base::require(question.worth_it_margin > 1, "a worth-it margin is a ratio above 1");
  Judgement judgement{.trial = trial.name,
                      .counted = trial.counted,
                      .kind = kind_of_lives(data, trial.counted),
                      .told_in = question.told_in,
                      .worth_it_margin = question.worth_it_margin,
                      .test = test_judged(data),
                      .runs = tested_runs(trial, data)};
  judgement.unit = judgement.kind.unit;
  for (std::size_t a = 0; a < data.groups.arms.size(); ++a) {
    judgement.arms.push_back(tested_arm(data, fit, a));
  }
  judgement.fit =
      fit_report(parts_of_times(data), fit.diagnostics, fit.chains * fit.draws_per_chain, seed);
  if (judgement.fit.usable) {
    judgement.comparisons = compare_tested(trial, judgement, data, fit, question, seed);
    const ArmsLasting lasting = arms_lasting(data, fit);
    judgement.media = compare_media(lasting, question.worth_it_margin, seed);
    add_cuts_across(judgement);
    judgement.factors = find_factor_effects(
        trial, lasting, {.worth_it_margin = question.worth_it_margin, .told_in = question.told_in});
  }
  judgement.cannot_say = not_told_by_tests(trial, judgement);
  add_claim_not_made(judgement, question.claim);
  set_aside_arms_not_judged(judgement, trial);
  return judgement;
}

}  // namespace keenfall::verdicts
