// Everything that is said about one trial's readings of one kind, or about its edge lives by one
// test: the arms, the comparisons, what the fit was like and what the data cannot say. Values only;
// judge.h and judge_lives.h make it, wire and cli show it.
//
// Units: cuts are as recorded (a cut, or whatever the table counts); readings in Judgement::unit;
// ratios and levels dimensionless. Intervals are equal-tailed posterior intervals.
#pragma once

#include "materials/told_in.h"
#include "numerics/interval.h"
#include "trials/trial.h"
#include "verdicts/across_media.h"
#include "verdicts/compared_where.h"
#include "verdicts/cuts_to_level.h"
#include "verdicts/factor_effect.h"
#include "verdicts/run_by_run.h"
#include "verdicts/verdict.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::verdicts {

struct CurvePoint {
  double cuts = 0;
  numerics::Interval reading;
  bool beyond_what_was_cut = false;

  bool operator==(const CurvePoint&) const = default;
};

struct ArmResult {
  trials::Arm arm;
  int runs = 0;       // runs that were used
  int specimens = 1;  // pieces they were cut with
  double longest_run_cuts = 0;
  int runs_that_never_blunt = 0;  // end no blunter than they began
  // Of arms that were read: what their curves say. Absent for arms that were only tested.
  std::optional<numerics::Interval> start_reading;
  std::optional<CutsToLevel> half_keenness;   // reading doubled (halved where higher is keener)
  std::optional<CutsToLevel> stop_level;      // reading at Judgement::stop_level times the start
  std::optional<CutsToLevel> common_reading;  // present when edges are compared at one reading
  std::optional<CutsToLevel> test;            // of arms that were tested: until the test is failed
  numerics::Interval run_scatter_log_sd;      // run-to-run sd of log cuts to half keenness or test
  std::optional<numerics::Interval> shape;    // the curve's power p
  std::vector<CurvePoint> curve;              // at cuts that the medium's arms share (curve_cuts.h)

  bool operator==(const ArmResult&) const = default;
};

struct RunResult {
  std::size_t arm = 0;  // index into Judgement::arms
  std::size_t run = 0;  // index into Trial::runs
  std::string name;
  std::string specimen;
  std::string block;
  std::optional<int> order;
  int checkpoints = 0;
  int readings_used = 0;
  int readings_struck = 0;
  int readings_doubtful = 0;  // of those used
  double last_cuts = 0;
  // Absent when the run was not used (voided, or nothing left after striking).
  std::optional<numerics::Interval> start_reading;
  std::optional<numerics::Interval> half_keenness_cuts;
  // Of a run that was tested: it still passed here (0: not known to have passed), had failed here.
  std::optional<double> lasted_cuts;
  std::optional<double> failed_by_cuts;
  bool stopped_before_half_keenness = false;  // its own readings never doubled: "at least"
  // The same to where its medium is compared (runs_compared.h).
  std::optional<numerics::Interval> compared_cuts;
  bool stopped_before_compared = false;
  std::string not_used_because;      // empty when used
  std::vector<std::string> remarks;  // "the reading falls from 22 to 26 cuts"

  bool operator==(const RunResult&) const = default;
};

struct RatioAtLevel {
  double level = 2;  // times the start reading
  numerics::Interval ratio;
  bool beyond_what_was_cut = false;

  bool operator==(const RatioAtLevel&) const = default;
};

enum class Matching { matched, differs, not_recorded };

// One thing other than the blade that could explain a difference.
struct AlsoDiffers {
  std::string what;  // "bevel angle"
  Matching matching = Matching::not_recorded;
  std::string a;  // as recorded for each arm; empty when not recorded
  std::string b;

  bool operator==(const AlsoDiffers&) const = default;
};

enum class ClaimAbout { these_blades, the_steels };

// How many more runs of each arm would probably settle it.
struct FurtherRuns {
  std::optional<int> runs_each;  // absent: over 40

  bool operator==(const FurtherRuns&) const = default;
};

// Where the runs of a family stand in a plan of several looks (planned_looks.h).
struct LookReport {
  std::vector<int> planned;  // runs of every arm at each look
  int fewest_runs = 0;       // of the arms compared
  int most_runs = 0;
  std::optional<int> number;     // of the planned looks this is, from 1; absent: none of them
  std::optional<int> next_runs;  // of every arm at the next look; absent: there is none
  double stretch_95 = 1;         // how many times as wide as a single look's the intervals are
  double stretch_90 = 1;

  bool operator==(const LookReport&) const = default;
};

// The same comparison by the quick engine (second_opinion.h), from these readings or others.
struct SecondOpinion {
  numerics::Interval ratio;  // single comparison
  RatioBounds simultaneous;
  Verdict verdict = Verdict::not_settled;
  bool agrees = true;  // quick: with the headline verdict; the others: with quick

  bool operator==(const SecondOpinion&) const = default;
};

// Arm a against arm b, ordered so that the median ratio a/b is at least 1.
struct Comparison {
  std::size_t a = 0;  // indices into Judgement::arms
  std::size_t b = 0;
  At at;
  numerics::Interval ratio;  // single comparison
  RatioBounds simultaneous;  // over the family: all pairs in one medium and method
  int family_size = 1;       // comparisons in that family
  std::vector<RatioAtLevel> ratio_by_level;
  double probability_longer = 0;
  double probability_worth_having = 0;
  Verdict verdict = Verdict::not_settled;  // the headline, by the simultaneous bounds
  Verdict single_verdict = Verdict::not_settled;
  bool near_boundary = false;               // another seed might flip the headline
  bool beyond_what_was_cut = false;         // for either arm
  std::optional<FurtherRuns> further_runs;  // present when not settled
  ClaimAbout claim_about = ClaimAbout::these_blades;
  std::optional<SecondOpinion> quick;
  std::optional<SecondOpinion> with_struck;       // with readings counted that were struck out
  std::optional<SecondOpinion> without_doubtful;  // with doubtful readings left out
  std::optional<LookReport> look;  // present when several looks were planned; bounds allow for it
  // The ratio of the pieces that were cut with, beside a claim about the steels.
  std::optional<numerics::Interval> ratio_these_blades;
  std::optional<RunByRun> run_by_run;  // absent where a single arrangement is all there is
  std::vector<AlsoDiffers> also_differs;
  std::vector<std::string> remarks;

  bool operator==(const Comparison&) const = default;
};

struct CurveCheck {
  bool passed = true;
  double smallest_p = 1;           // over all places looked at, times their number, at most 1
  std::vector<std::string> where;  // sentences: which arm, between which cuts, which way

  bool operator==(const CurveCheck&) const = default;
};

enum class Covariate { start_reading, order_of_cutting };

// What a run's own circumstances did to its half keenness, as a ratio.
struct CovariateEffect {
  Covariate covariate = Covariate::start_reading;
  // Of a run that starts 10 % blunter than its arm's typical run; or of the last run of the trial
  // over the first.
  numerics::Interval ratio;

  bool operator==(const CovariateEffect&) const = default;
};

struct FitReport {
  std::string model;                     // "default" or "plain"
  std::vector<std::string> model_parts;  // plain words: "robust readings", "blocks"
  bool usable = false;
  std::vector<std::string> reasons;  // why it is not usable
  double r_hat_max = 0;
  double ess_bulk_min = 0;
  double ess_tail_min = 0;
  int divergences = 0;
  int draws = 0;  // over all chains
  std::uint64_t seed = 0;
  double cpu_seconds = 0;

  bool operator==(const FitReport&) const = default;
};

// The pass-or-fail test that edge lives are about.
struct TestJudged {
  std::string words;            // "slices newsprint both ways"; empty: not said
  std::optional<int> rung;      // of a pass ladder
  std::optional<double> level;  // what failing means on a curve: times the start reading

  bool operator==(const TestJudged&) const = default;
};

struct Judgement {
  std::string trial;
  trials::Counted counted;  // what the fields called cuts count
  trials::ReadingKind kind;
  std::string unit;           // of every reading here
  materials::ToldIn told_in;  // what sentences about it are told in
  std::string thread;         // empty: not recorded
  double worth_it_margin = 1.5;
  double stop_level = 4;               // times the start reading
  std::optional<double> stop_reading;  // in `unit`, when one was asked for
  std::optional<TestJudged> test;      // present where arms were tested
  std::vector<RunResult> runs;
  // Runs read or tested in this way of arms of which none could be used; RunResult::arm says
  // nothing.
  std::vector<RunResult> runs_of_arms_not_judged;
  std::vector<ArmResult> arms;
  std::vector<Comparison> comparisons;      // empty when the fit is not usable
  std::optional<AcrossMedia> media;         // where blades were cut in several media
  std::optional<FactorEffects> factors;     // where what the arms differ in is crossed
  std::vector<CovariateEffect> covariates;  // those that the model carries
  CurveCheck curve_check;
  FitReport fit;
  std::vector<std::string> cannot_say;  // what the data cannot say, in sentences
  std::vector<std::string> taken_as;    // how the table was read, in sentences; of the first kind

  bool operator==(const Judgement&) const = default;
};

}  // namespace keenfall::verdicts
