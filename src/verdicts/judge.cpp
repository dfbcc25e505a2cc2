#include "verdicts/judge.h"

#include "base/require.h"
#include "verdicts/arms_lasting.h"
#include "verdicts/arms_not_judged.h"
#include "verdicts/compare.h"
#include "verdicts/compared_at.h"
#include "verdicts/each_run.h"
#include "verdicts/factor_effects.h"
#include "verdicts/fit_report.h"
#include "verdicts/lasting.h"
#include "verdicts/media_compared.h"
#include "verdicts/runs_compared.h"
#include "verdicts/what_was_seen.h"

#include <cstddef>

namespace keenfall::verdicts {

namespace {

using blunting::BluntingData;
using blunting::BluntingFit;

void add_cuts_to_stop_level(Judgement& judgement,
                            const BluntingData& data,
                            const BluntingFit& fit) {
  const At at{.what = ComparedAt::level, .level = judgement.stop_level};
  for (std::size_t a = 0; a < judgement.arms.size(); ++a) {
    judgement.arms[a].stop_level = cuts_until(data, fit, a, at);
  }
}

// Where a family is compared at a common reading, its arms say how long they take to it.
void add_common_readings(Judgement& judgement, const BluntingData& data, const BluntingFit& fit) {
  for (const Comparison& pair : judgement.comparisons) {
    if (pair.at.what != ComparedAt::common_reading) continue;
    for (const std::size_t arm : {pair.a, pair.b}) {
      if (!judgement.arms[arm].common_reading) {
        judgement.arms[arm].common_reading = cuts_until(data, fit, arm, pair.at);
      }
    }
  }
}

// The media may be compared elsewhere than each by itself, so their arms have cuts to there too.
void add_cuts_across(Judgement& judgement, const BluntingData& data, const BluntingFit& fit) {
  if (!judgement.media) return;
  for (MediumOfTable& medium : judgement.media->media) {
    for (const std::size_t arm : medium.arms) {
      medium.lasting.push_back(cuts_until(data, fit, arm, judgement.media->at));
    }
  }
}

void add_compared_cuts(Judgement& judgement, const BluntingData& data, const BluntingFit& fit) {
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    const At at = where_compared(judgement, data.runs[r].arm);
    put_compared_cuts(judgement.runs[data.runs[r].run], data, fit, r, at);
  }
}

void add_run_by_run(Judgement& judgement,
                    const BluntingData& data,
                    const BluntingFit& fit,
                    base::Seed seed) {
  constexpr std::size_t kMostLooks = 300;  // beyond, nobody reads them and they fill the answer
  if (judgement.comparisons.empty() || judgement.comparisons.size() > kMostLooks) return;
  const auto curves = curves_of_runs(data, fit);
  const RunByRunBudget budget{.comparisons = judgement.comparisons.size(), .seed = seed};
  for (Comparison& pair : judgement.comparisons) {
    pair.run_by_run = compare_run_by_run(data, curves, pair, budget);
  }
}

}  // namespace

Judgement judge(const trials::Trial& trial,
                const BluntingData& data,
                const BluntingFit& fit,
                const Question& question,
                base::Seed seed) {
  return judge(trial, data, fit, describe_curves(trial, data, fit), question, seed);
}

Judgement judge(const trials::Trial& trial,
                const BluntingData& data,
                const BluntingFit& fit,
                const DescribedCurves& described,
                const Question& question,
                base::Seed seed) {
  base::require(question.worth_it_margin > 1, "a worth-it margin is a ratio above 1");
  base::require(!question.stop_level || !question.stop_reading,
                "a stop level or a stop reading, not both");
  Judgement judgement{.trial = trial.name,
                      .counted = trial.counted,
                      .kind = data.kind,
                      .unit = data.unit,
                      .told_in = question.told_in,
                      .thread = data.thread,
                      .worth_it_margin = question.worth_it_margin,
                      .stop_level = stop_level_of(question, data.kind),
                      .stop_reading = question.stop_reading,
                      .runs = described.runs,
                      .arms = described.arms};
  add_cuts_to_stop_level(judgement, data, fit);
  judgement.fit =
      fit_report(in_words(fit.parts), fit.diagnostics, fit.chains * fit.draws_per_chain, seed);
  if (judgement.fit.usable) {
    judgement.comparisons = compare_all(trial, data, fit, question, seed);
    add_common_readings(judgement, data, fit);
    add_run_by_run(judgement, data, fit, seed);
    const ArmsLasting lasting = arms_lasting(data, fit, judgement.comparisons);
    judgement.media = compare_media(lasting, question.worth_it_margin, seed);
    add_cuts_across(judgement, data, fit);
    judgement.factors = find_factor_effects(
        trial, lasting, {.worth_it_margin = question.worth_it_margin, .told_in = question.told_in});
    judgement.covariates = described.covariates;
    judgement.curve_check = described.curve_check;
  }
  add_compared_cuts(judgement, data, fit);
  judgement.cannot_say = what_cannot_be_said(trial, data, judgement);
  add_claim_not_made(judgement, question.claim);
  set_aside_arms_not_judged(judgement, trial);
  return judgement;
}

}  // namespace keenfall::verdicts
