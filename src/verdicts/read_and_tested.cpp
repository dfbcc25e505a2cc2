#include "verdicts/read_and_tested.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "blunting/quick/quick_fit.h"
#include "verdicts/joined_family.h"
#include "verdicts/lasting.h"
#include "verdicts/read_and_tested_words.h"
#include "verdicts/runs_compared.h"
#include "verdicts/second_opinion.h"
#include "verdicts/what_was_seen.h"

#include <algorithm>
#include <string>
#include <utility>

namespace keenfall::verdicts {

namespace {

// What a level a little lower or higher would make of the ratio: the rise by a quarter.
constexpr double kRiseChanged = 1.25;

// Rounded so that it can be said, unless that leaves no rise.
double sayable_level(double level) {
  const double rounded = std::stod(base::with_figures(level, 2));
  return rounded > 1 ? rounded : level;
}

double lower_level(double level) { return sayable_level(1 + (level - 1) / kRiseChanged); }
double higher_level(double level) { return sayable_level(1 + (level - 1) * kRiseChanged); }

// The arm as it was judged by its readings, with the cuts until the level.
ArmResult read_arm(const ReadEdges& read, std::size_t arm, double level) {
  ArmResult result = read.judgement.arms.at(arm);
  result.stop_level =
      cuts_until(read.data, read.fit, arm, {.what = ComparedAt::level, .level = level});
  result.start_reading.reset();
  result.common_reading.reset();
  result.shape.reset();
  result.curve.clear();
  return result;
}

// The runs used of one arm; what was noticed in them is told where they are judged.
void add_runs(Judgement& judgement, const Judgement& from, std::size_t arm) {
  for (const RunResult& run : from.runs) {
    if (run.arm != arm || !run.not_used_because.empty()) continue;
    RunResult taken = run;
    taken.arm = judgement.arms.size() - 1;
    taken.start_reading.reset();
    taken.remarks.clear();
    judgement.runs.push_back(std::move(taken));
  }
}

// Of the runs added so far, those of edges that were read last to the level the test stands for.
void put_cuts_to_level(Judgement& judgement, const ReadEdges& read) {
  const At at{.what = ComparedAt::level, .level = judgement.stop_level};
  for (RunResult& run : judgement.runs) {
    const auto in_data = std::ranges::find(read.data.runs, run.run, &blunting::RunData::run);
    if (!run.compared_cuts || in_data == read.data.runs.end()) continue;
    const auto place = static_cast<std::size_t>(in_data - read.data.runs.begin());
    put_compared_cuts(run, read.data, read.fit, place, at);
  }
}

void add_arms(Judgement& judgement,
              const ReadEdges& read,
              const TestedEdges& tested,
              const ReadAndTestedArms& arms) {
  for (const std::size_t arm : arms.read) {
    judgement.arms.push_back(read_arm(read, arm, judgement.stop_level));
    add_runs(judgement, read.judgement, arm);
  }
  put_cuts_to_level(judgement, read);
  for (const std::size_t arm : arms.tested) {
    judgement.arms.push_back(tested.judgement.arms.at(arm));
    add_runs(judgement, tested.judgement, arm);
  }
}

FitReport fit_of_both(const FitReport& read, const FitReport& tested, base::Seed seed) {
  FitReport both{.model = read.model,
                 .model_parts = {"the fit of the readings", "the fit of the test"},
                 .usable = read.usable && tested.usable,
                 .r_hat_max = std::max(read.r_hat_max, tested.r_hat_max),
                 .ess_bulk_min = std::min(read.ess_bulk_min, tested.ess_bulk_min),
                 .ess_tail_min = std::min(read.ess_tail_min, tested.ess_tail_min),
                 .divergences = read.divergences + tested.divergences,
                 .draws = std::min(read.draws, tested.draws),
                 .seed = seed.number};
  for (const std::string& reason : read.reasons) {
    both.reasons.push_back("Of the readings: " + reason);
  }
  for (const std::string& reason : tested.reasons) {
    both.reasons.push_back("Of the test: " + reason);
  }
  return both;
}

// What all media are compared by.
struct Comparing {
  const trials::Trial& trial;
  const ReadEdges& read;
  const TestedEdges& tested;
  const LivesQuestion& question;
  base::Seed seed;
  std::vector<blunting::ArmDraws> quick;  // as BluntingData::arms
};

std::vector<Comparison> compared_in(const ReadAndTestedArms& arms, const Comparing& by) {
  const double level = *by.tested.data.level;
  const auto joined_at = [&](double times) {
    return joined_family(by.read, by.tested, arms, times, by.question.claim);
  };
  const JoinedFamily joined = joined_at(level);
  std::vector<Comparison> comparisons =
      compare_family(by.trial,
                     joined.family,
                     joined.pairs,
                     {.worth_it_margin = by.question.worth_it_margin,
                      .looks = by.question.looks,
                      .seed = by.seed,
                      .told_in = by.question.told_in});
  // Only the curves were fitted another way.
  add_second_opinions(
      comparisons, with_quick_curves(joined, by.read, arms, by.quick), by.question.worth_it_margin);
  add_ratio_at_level(comparisons, joined_at(lower_level(level)).family);
  add_ratio_at_level(comparisons, joined.family);
  add_ratio_at_level(comparisons, joined_at(higher_level(level)).family);
  for (Comparison& pair : comparisons) pair.remarks.push_back(what_the_level_does(pair));
  return comparisons;
}

}  // namespace

std::vector<ReadAndTestedArms> arms_read_and_tested(const blunting::BluntingData& read,
                                                    const blunting::TimeData& tested) {
  std::vector<ReadAndTestedArms> media;
  for (std::size_t m = 0; m < tested.groups.media.size(); ++m) {
    ReadAndTestedArms arms{.medium_words = tested.groups.media[m]};
    for (std::size_t a = 0; a < read.arms.size(); ++a) {
      if (read.media[read.medium_of_arm[a]] == arms.medium_words) arms.read.push_back(a);
    }
    for (std::size_t a = 0; a < tested.groups.arms.size(); ++a) {
      const bool was_read = std::ranges::count(read.arms, tested.groups.arms[a]) > 0;
      if (tested.groups.medium_of_arm[a] == m && !was_read) arms.tested.push_back(a);
    }
    if (!arms.read.empty() && !arms.tested.empty()) media.push_back(std::move(arms));
  }
  return media;
}

Judgement judge_read_and_tested(const trials::Trial& trial,
                                const ReadEdges& read,
                                const TestedEdges& tested,
                                const LivesQuestion& question,
                                base::Seed seed) {
  base::require(tested.data.level.has_value(), "what failing the test means on a curve is stated");
  const std::vector<ReadAndTestedArms> media = arms_read_and_tested(read.data, tested.data);
  base::require(!media.empty(), "some arms were read and others tested, in one medium");
  Judgement judgement{.trial = trial.name,
                      .counted = trial.counted,
                      .kind = {.name = std::string(kReadAndTested),
                               .words = "edges that were read against edges that were tested",
                               .unit = trial.counted.many,
                               .keener_when = read.data.kind.keener_when,
                               .use = trials::ReadingUse::evidence},
                      .unit = trial.counted.many,
                      .told_in = question.told_in,
                      .thread = read.data.thread,
                      .worth_it_margin = question.worth_it_margin,
                      .stop_level = *tested.data.level,
                      .test = tested.judgement.test,
                      .fit = fit_of_both(read.judgement.fit, tested.judgement.fit, seed)};
  Comparing by{.trial = trial, .read = read, .tested = tested, .question = question, .seed = seed};
  if (judgement.fit.usable) by.quick = blunting::quick_fit(read.data, read.model).arms;
  for (const ReadAndTestedArms& arms : media) {
    const std::size_t first_arm = judgement.arms.size();
    add_arms(judgement, read, tested, arms);
    if (!judgement.fit.usable) continue;
    for (Comparison& pair : compared_in(arms, by)) {
      pair.a += first_arm;
      pair.b += first_arm;
      judgement.comparisons.push_back(std::move(pair));
    }
  }
  judgement.cannot_say = not_told_by_reading_and_testing(judgement, read, tested);
  add_claim_not_made(judgement, question.claim);
  return judgement;
}

}  // namespace keenfall::verdicts
