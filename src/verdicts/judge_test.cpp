#include "verdicts/judge.h"

#include "blunting/simulated_run.h"
#include "verdicts/second_opinion.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace keenfall::verdicts {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;

struct ArmTruth {
  std::string blade;
  std::string finish;
  double start = 104;
  double half_keenness = 40;
  int runs = 6;
};

trials::Trial simulated(const std::vector<ArmTruth>& truths,
                        std::uint64_t seed,
                        double last = 127) {
  numerics::RandomStream random({seed}, 0);
  trials::Trial trial{
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (const ArmTruth& truth : truths) {
    if (trials::find_blade(trial, truth.blade) == nullptr)
      trial.blades.push_back({.name = truth.blade});
    for (int i = 0; i < truth.runs; ++i) {
      trials::Run run{
          .name = std::to_string(i),
          .arm = {
              .blade = truth.blade, .edge = {.finish = truth.finish}, .medium = {.name = "sisal"}}};
      std::vector<double> checkpoints;
      for (int cuts = 0; cuts <= last; cuts = 2 * cuts + 1) checkpoints.push_back(cuts);
      run.readings =
          blunting::simulated_readings({std::log(truth.start) + 0.05 * random.normal(),
                                        std::log(truth.half_keenness) + 0.15 * random.normal(),
                                        0.7},
                                       {.checkpoints = checkpoints, .repeats = 3},
                                       {.reading_scatter = 0.08},
                                       random);
      trial.runs.push_back(std::move(run));
    }
  }
  return trial;
}

Judgement judged(const trials::Trial& trial, const Question& question) {
  const auto data =
      blunting::prepare(trial, blunting::fits_of(trial)[0], blunting::ReadingErrors::robust);
  const auto fit = blunting::fit_blunting(
      *data, blunting::default_model(), {}, {2}, base::threads(2), base::unwatched());
  return judge(trial, *data, *fit, question, {2});
}

TEST(Judge, NamesABladeOfWhichNoRunCouldBeUsedAndKeepsItsRunsApart) {
  trials::Trial trial = simulated({{.blade = "A", .runs = 2}, {.blade = "B", .runs = 2}}, 1);
  trial.runs[2].voided_reason = "burr left";
  trial.runs[3].voided_reason = "burr left";
  const Judgement found = judged(trial, {});

  EXPECT_EQ(found.runs.size(), 2U);
  ASSERT_EQ(found.runs_of_arms_not_judged.size(), 2U);
  EXPECT_EQ(found.runs_of_arms_not_judged[1].run, 3U);
  EXPECT_EQ(found.runs_of_arms_not_judged[1].not_used_because, "voided: burr left");
  EXPECT_EQ(found.cannot_say.back(),
            "Nothing is said of B on sisal, since none of its runs could be used here: voided: "
            "burr left (2 runs).");
}

TEST(Judge, FindsAThreefoldDifferenceWorthHavingAndPutsTheLongerFirst) {
  const Judgement found =
      judged(simulated({{.blade = "A"}, {.blade = "B", .half_keenness = 120}}, 1), {});

  ASSERT_TRUE(found.fit.usable);
  ASSERT_EQ(found.comparisons.size(), 1U);
  const Comparison& pair = found.comparisons[0];
  EXPECT_EQ(found.arms[pair.a].arm.blade, "B");
  EXPECT_EQ(pair.verdict, Verdict::longer_and_worth_having);
  EXPECT_EQ(pair.at, (At{.what = ComparedAt::half_keenness}));
  EXPECT_GT(pair.probability_worth_having, 0.97);
  EXPECT_FALSE(pair.further_runs);
  EXPECT_EQ(pair.claim_about, ClaimAbout::these_blades);
  EXPECT_TRUE(pair.remarks.empty()) << pair.remarks.front();  // such as that the curves cross
}

TEST(Judge, ComparesEdgesThatStartDifferentlyAtOneCommonReading) {
  const Judgement found = judged(simulated({{.blade = "A", .finish = "F220", .start = 200},
                                            {.blade = "A", .finish = "F1200", .start = 100}},
                                           2),
                                 {});

  const Comparison& pair = found.comparisons[0];
  EXPECT_EQ(pair.at.what, ComparedAt::common_reading);
  EXPECT_NEAR(pair.at.reading, 400, 40);  // twice the blunter start
  ASSERT_TRUE(found.arms[0].common_reading);
  // The coarse edge starts at 200 gf and needs 40 cuts to 400; the fine one must quadruple:
  // 40 x 3^(1 / 0.7) = 192 cuts (closed form).
  EXPECT_EQ(found.arms[pair.a].arm.edge.finish, "F1200");
  EXPECT_LT(pair.ratio.lo95, 192.0 / 40);
  EXPECT_GT(pair.ratio.hi95, 192.0 / 40);
  EXPECT_FALSE(pair.remarks.empty());
}

TEST(Judge, ComparesWhereItIsAskedTo) {
  const trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 3);

  EXPECT_EQ(judged(trial, {.stop_level = 3}).comparisons[0].at,
            (At{.what = ComparedAt::level, .level = 3}));
  EXPECT_EQ(judged(trial, {.stop_reading = 300}).comparisons[0].at.what,
            ComparedAt::common_reading);
  EXPECT_DOUBLE_EQ(judged(trial, {.stop_reading = 300}).comparisons[0].at.reading, 300);
}

TEST(Judge, CountsInThousandsOfCutsAsItCountsInCuts) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 11);
  for (trials::Run& run : trial.runs) {
    for (trials::Reading& reading : run.readings) reading.cuts /= 10000;
  }
  const Judgement found = judged(trial, {});

  EXPECT_NEAR(found.arms[0].half_keenness->cuts.median, 0.004, 0.0012);
  EXPECT_LT(found.arms[0].half_keenness->cuts.lo95, found.arms[0].half_keenness->cuts.median);
}

TEST(Judge, SaysAtLeastWhereNoRunGotToHalfKeenness) {
  const Judgement found =
      judged(simulated({{.blade = "A", .half_keenness = 400}, {.blade = "B"}}, 4, 63), {});

  EXPECT_TRUE(found.arms[0].half_keenness->beyond_what_was_cut);
  EXPECT_EQ(found.arms[0].half_keenness->runs_that_reached, 0);
  EXPECT_TRUE(found.comparisons[0].beyond_what_was_cut);
  EXPECT_EQ(found.arms[0].half_keenness->at_least(), found.arms[0].half_keenness->cuts.lo95);
  EXPECT_EQ(found.arms[1].half_keenness->at_least(), std::nullopt);
  EXPECT_THAT(found.cannot_say,
              Contains("No run of A on sisal reached half keenness by 63 cuts, where the longest "
                       "was stopped, so its cuts to half keenness are said as \"at least\", the "
                       "lower end of the 95 % interval."));
  EXPECT_TRUE(found.runs[0].stopped_before_half_keenness);
}

// One run alone: what it scatters from the next is not seen, and the next may get there sooner.
TEST(Judge, SaysWhyAtLeastMayBeLessThanWasCut) {
  const Judgement found = judged(
      simulated(
          {{.blade = "A", .half_keenness = 100, .runs = 1}, {.blade = "B", .runs = 1}}, 4, 63),
      {});

  ASSERT_TRUE(found.arms[0].half_keenness->at_least());
  EXPECT_LT(*found.arms[0].half_keenness->at_least(), 63);
  EXPECT_THAT(found.cannot_say,
              Contains(HasSubstr("That is less than was cut, since another edge of it may last "
                                 "less than these did.")));
}

TEST(Judge, WidensForAFamilyAndKeepsTheSingleVerdictBeside) {
  const Judgement found = judged(
      simulated({{.blade = "A"}, {.blade = "B"}, {.blade = "C", .half_keenness = 100}}, 5), {});

  ASSERT_EQ(found.comparisons.size(), 3U);
  for (const Comparison& pair : found.comparisons) {
    EXPECT_EQ(pair.family_size, 3);
    EXPECT_LE(pair.simultaneous.lo95, pair.ratio.lo95);
    EXPECT_GE(pair.simultaneous.hi95, pair.ratio.hi95);
    EXPECT_GE(pair.ratio.median, 1);
  }
}

TEST(Judge, OfOneRunEachIsWideAndSaysWhoseScatterItBorrows) {
  const Judgement found =
      judged(simulated({{.blade = "A", .runs = 1}, {.blade = "B", .runs = 1}}, 6), {});

  ASSERT_TRUE(found.fit.usable);
  EXPECT_EQ(found.comparisons[0].verdict, Verdict::not_settled);
  EXPECT_TRUE(found.comparisons[0].further_runs);
  EXPECT_TRUE(std::ranges::any_of(found.cannot_say, [](const std::string& sentence) {
    return sentence.starts_with("One run of A");
  }));
}

TEST(Judge, MakesAClaimAboutSteelsOnlyWithSeveralSpecimensOnBothSides) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 7);
  const auto specimens = [&trial](const std::string& blade, int count) {
    int i = 0;
    for (trials::Run& run : trial.runs) {
      if (run.arm.blade == blade) run.specimen = std::to_string(i++ % count);
    }
  };
  specimens("A", 3);
  EXPECT_EQ(judged(trial, {}).comparisons[0].claim_about, ClaimAbout::these_blades);
  specimens("B", 3);
  const Comparison steels = judged(trial, {}).comparisons[0];
  EXPECT_EQ(steels.claim_about, ClaimAbout::the_steels);
  ASSERT_TRUE(steels.ratio_these_blades);
  EXPECT_LT(steels.ratio_these_blades->hi95 / steels.ratio_these_blades->lo95,
            steels.ratio.hi95 / steels.ratio.lo95);
}

// With one run a piece, the scatter from run to run holds that between pieces.
TEST(Judge, TakesRunsForPiecesWhereEachPieceWasCutWithOnce) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 7);
  for (trials::Run& run : trial.runs) run.specimen = run.arm.blade + run.name;

  const Judgement found = judged(trial, {});

  EXPECT_EQ(std::ranges::count(found.fit.model_parts, "specimens"), 0);
  EXPECT_EQ(found.comparisons[0].claim_about, ClaimAbout::the_steels);
}

// From 60 cuts on the scale was off when A was read; those readings are struck.
TEST(Judge, TellsWhatStruckReadingsWouldChange) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 9);
  const auto judged_with_opinions = [](const trials::Trial& what) {
    const auto data =
        blunting::prepare(what, blunting::fits_of(what)[0], blunting::ReadingErrors::robust);
    Judgement judgement = judged(what, {});
    add_second_opinions(judgement, what, *data, blunting::default_model());
    return judgement.comparisons[0];
  };
  const Comparison clean = judged_with_opinions(trial);
  for (trials::Run& run : trial.runs) {
    if (run.arm.blade != "A") continue;
    for (trials::Reading& reading : run.readings) {
      if (reading.cuts < 60) continue;
      reading.reading *= 4;
      reading.struck_reason = "scale off";
    }
  }
  const Comparison struck = judged_with_opinions(trial);

  EXPECT_FALSE(clean.with_struck);
  ASSERT_TRUE(struck.with_struck);
  EXPECT_GT(std::abs(std::log(struck.with_struck->ratio.median / struck.quick->ratio.median)), 0.2);
}

// Two doubtful readings that do not stand out, one run of A.
TEST(Judge, TellsWhatLeavingOutDoubtfulReadingsWouldChangeAndCountsThemOtherwise) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 9);
  const auto opinions = [](const trials::Trial& what) {
    const auto data =
        blunting::prepare(what, blunting::fits_of(what)[0], blunting::ReadingErrors::robust);
    Judgement judgement = judged(what, {});
    add_second_opinions(judgement, what, *data, blunting::default_model());
    return judgement;
  };
  const Judgement trusted = opinions(trial);
  for (const std::size_t i : {1U, 2U}) {
    trial.runs[0].readings[i].doubtful_reason = "thread slack";
  }
  const Judgement doubted = opinions(trial);
  for (const std::size_t i : {1U, 2U}) trial.runs[0].readings[i].struck_reason = "thread slack";
  const Judgement struck = opinions(trial);

  EXPECT_FALSE(trusted.comparisons[0].without_doubtful);
  EXPECT_EQ(doubted.runs[0].readings_doubtful, 2);
  EXPECT_EQ(doubted.comparisons[0].ratio, trusted.comparisons[0].ratio);
  ASSERT_TRUE(doubted.comparisons[0].without_doubtful);
  EXPECT_EQ(doubted.comparisons[0].without_doubtful->ratio, struck.comparisons[0].quick->ratio);
  EXPECT_EQ(struck.runs[0].readings_doubtful, 0);
}

// Of C nothing is left when all of it is doubtful.
TEST(Judge, HasNoAnswerWithoutDoubtfulReadingsWhereAnArmHasNoOthers) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}, {.blade = "C"}}, 6);
  for (trials::Run& run : trial.runs) {
    if (run.arm.blade != "C") continue;
    for (trials::Reading& reading : run.readings) reading.doubtful_reason = "wrong thread?";
  }
  const auto data =
      blunting::prepare(trial, blunting::fits_of(trial)[0], blunting::ReadingErrors::robust);
  Judgement judgement = judged(trial, {});

  add_second_opinions(judgement, trial, *data, blunting::default_model());

  for (const Comparison& pair : judgement.comparisons) {
    const bool is_of_c =
        judgement.arms[pair.a].arm.blade == "C" || judgement.arms[pair.b].arm.blade == "C";
    EXPECT_EQ(pair.without_doubtful.has_value(), !is_of_c);
  }
}

TEST(Judge, SaysOfRunsThatEndNoBlunterThatTheCurveDoesNotDescribeThem) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 8);
  for (std::size_t r = 0; r < 3; ++r) {
    for (trials::Reading& reading : trial.runs[r].readings)
      reading.reading = 104 - 0.1 * reading.cuts;
  }

  const Judgement found = judged(trial, {});

  EXPECT_TRUE(std::ranges::any_of(found.cannot_say, [](const std::string& sentence) {
    return sentence.starts_with("3 of 6 runs of A on sisal end no blunter than they began");
  }));
}

TEST(Judge, KeepsToTheseBladesWhereAskedAndSaysWhereAClaimAboutSteelsCannotBeMade) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 7);
  int i = 0;
  for (trials::Run& run : trial.runs) run.specimen = std::to_string(i++ % 2);
  const Comparison kept = judged(trial, {.claim = ClaimAbout::these_blades}).comparisons[0];
  for (trials::Run& run : trial.runs) run.specimen.clear();
  const Judgement unmet = judged(trial, {.claim = ClaimAbout::the_steels});

  EXPECT_EQ(kept.claim_about, ClaimAbout::these_blades);
  EXPECT_FALSE(kept.ratio_these_blades);
  EXPECT_EQ(unmet.comparisons[0].claim_about, ClaimAbout::these_blades);
  EXPECT_TRUE(std::ranges::any_of(unmet.cannot_say, [](const std::string& sentence) {
    return sentence.starts_with("A claim about the steels was asked for");
  }));
}

TEST(Judge, NamesAFallingReadingAndAVoidedRun) {
  trials::Trial trial = simulated({{.blade = "A"}, {.blade = "B"}}, 8);
  for (trials::Reading& reading : trial.runs[0].readings) {
    if (reading.cuts == 63) reading.reading /= 2;
  }
  trial.runs[1].voided_reason = "dropped on the floor";
  const Judgement found = judged(trial, {});

  EXPECT_TRUE(std::ranges::any_of(found.runs[0].remarks, [](const std::string& remark) {
    return remark.starts_with("gets keener from 31 to 63 cuts");
  }));
  EXPECT_EQ(found.runs[1].not_used_because, "voided: dropped on the floor");
  EXPECT_EQ(found.runs.size(), trial.runs.size());
}

}  // namespace
}  // namespace keenfall::verdicts
