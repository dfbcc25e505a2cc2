#include "verdicts/read_and_tested.h"

#include "verdicts/joined_family.h"
#include "verdicts/made_read_and_tested.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>
#include <string>

namespace keenfall::verdicts {
namespace {

using ::testing::Contains;
using testing::EdgeTruth;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::judged_both_ways;
using ::testing::Not;
using testing::read_and_tested;
using ::testing::ThrowsMessage;
using testing::TrialTruth;

std::vector<ReadAndTestedArms> arms_of_both(const trials::Trial& trial) {
  const auto readings =
      blunting::prepare(trial, blunting::fits_of(trial)[0], blunting::ReadingErrors::robust);
  const auto lives = blunting::prepare_times(trial, blunting::tests_of(trial)[0]);
  return arms_read_and_tested(*readings, *lives);
}

// A is read, B read and tested, C and D tested; E and F alone in media of their own.
TrialTruth six_edges() {
  return {.edges = {{.blade = "A"},
                    {.blade = "B", .is_tested = true},
                    {.blade = "C", .is_read = false, .is_tested = true},
                    {.blade = "D", .is_read = false, .is_tested = true},
                    {.blade = "E", .is_read = false, .is_tested = true, .medium = "rope"},
                    {.blade = "F", .medium = "felt"}},
          .runs_each = 4,
          .last_checkpoint = 255};
}

TEST(ArmsReadAndTested, AreThoseOfOneMediumAndOneReadAndTestedCountsAsRead) {
  const auto found = arms_of_both(read_and_tested(six_edges(), 1));

  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].read.size(), 2U);
  EXPECT_EQ(found[0].tested.size(), 2U);
  EXPECT_EQ(found[0].medium_words, "sisal");
}

TEST(ArmsReadAndTested, AreNoneWhereEveryTestedEdgeWasReadToo) {
  const TrialTruth truth{.edges = {{.blade = "A"}, {.blade = "B", .is_tested = true}},
                         .runs_each = 2};

  EXPECT_THAT(arms_of_both(read_and_tested(truth, 1)), IsEmpty());
}

TEST(DrawsEvenlyChosen, KeepTheirOrderAndGoRound) {
  EXPECT_THAT(evenly_chosen({0, 1, 2, 3, 4, 5}, 3, 0), ElementsAre(0, 2, 4));
  EXPECT_THAT(evenly_chosen({0, 1, 2, 3, 4, 5}, 6, 2), ElementsAre(2, 3, 4, 5, 0, 1));
  EXPECT_THAT(evenly_chosen({7}, 2, 5), ElementsAre(7, 7));
}

const Judgement& six_edges_judged() {
  static const Judgement judgement = judged_both_ways(read_and_tested(six_edges(), 1), {});
  return judgement;
}

TEST(ReadAgainstTested, ComparesEveryReadArmWithEveryTestedArmAndNothingElse) {
  std::set<std::set<std::string>> pairs;
  for (const Comparison& pair : six_edges_judged().comparisons) {
    pairs.insert(
        {six_edges_judged().arms[pair.a].arm.blade, six_edges_judged().arms[pair.b].arm.blade});
  }

  const std::set<std::set<std::string>> wanted{{"A", "C"}, {"A", "D"}, {"B", "C"}, {"B", "D"}};
  EXPECT_EQ(pairs, wanted);
  EXPECT_EQ(six_edges_judged().comparisons.size(), 4U)
      << ::testing::PrintToString(six_edges_judged().fit.reasons);
}

TEST(ReadAgainstTested, IsOneFamilyAtTheStatedLevel) {
  ASSERT_FALSE(six_edges_judged().comparisons.empty());
  for (const Comparison& pair : six_edges_judged().comparisons) {
    EXPECT_EQ(pair.family_size, 4);
    EXPECT_EQ(pair.at, (At{.what = ComparedAt::level, .level = 3}));
    EXPECT_TRUE(pair.quick);
    EXPECT_FALSE(pair.also_differs.empty());
  }
}

TEST(ReadAgainstTested, HoldsOnlyTheArmsComparedAndTheirRuns) {
  EXPECT_EQ(six_edges_judged().arms.size(), 4U);
  EXPECT_EQ(six_edges_judged().runs.size(), 16U);
  for (const RunResult& run : six_edges_judged().runs) EXPECT_LT(run.arm, 4U);
}

// The middle run of an arm is its typical run, by the model: so at the stated level too.
TEST(ReadAgainstTested, HasTheRunsThatWereReadAtTheStatedLevel) {
  const Judgement& found = six_edges_judged();
  for (std::size_t a = 0; a < found.arms.size(); ++a) {
    if (found.arms[a].test) continue;
    double log_sum = 0;
    int runs = 0;
    for (const RunResult& run : found.runs) {
      if (run.arm != a) continue;
      EXPECT_GT(run.compared_cuts->median, 1.5 * run.half_keenness_cuts->median);
      log_sum += std::log(run.compared_cuts->median);
      ++runs;
    }
    EXPECT_NEAR(log_sum / runs, std::log(found.arms[a].stop_level->cuts.median), 0.1);
  }
}

TEST(ReadAgainstTested, SaysWhatItRestsOn) {
  const auto& said = six_edges_judged().cannot_say;

  EXPECT_THAT(said, Contains(HasSubstr("means 3 times the start reading is a statement")));
  EXPECT_THAT(said, Contains(HasSubstr("B on sisal was both read and tested")));
  EXPECT_THAT(said, Contains(HasSubstr("fitted apart")));
  EXPECT_THAT(said, Not(Contains(HasSubstr("carried on"))));
}

TEST(ReadAgainstTested, SaysWhatAnotherLevelWouldMakeOfARatio) {
  ASSERT_FALSE(six_edges_judged().comparisons.empty());
  const Comparison& pair = six_edges_judged().comparisons.front();

  ASSERT_EQ(pair.ratio_by_level.size(), 3U);
  EXPECT_NEAR(pair.ratio_by_level[0].level, 2.6, 1e-12);  // 1 + 2 / 1.25
  EXPECT_NEAR(pair.ratio_by_level[2].level, 3.5, 1e-12);  // 1 + 2 x 1.25
  EXPECT_EQ(pair.ratio_by_level[1].ratio, pair.ratio);
  EXPECT_THAT(pair.remarks, Contains(HasSubstr("Were failing the test 2.6 times the start")));
}

TEST(ReadAgainstTested, ComparesNothingWhereTheFitOfTheTestIsNotUsable) {
  const auto trial = read_and_tested(six_edges(), 1);
  const Judgement found = judged_both_ways(trial, {}, {.chains = 2, .warmup = 100, .draws = 40});

  EXPECT_FALSE(found.fit.usable);
  EXPECT_THAT(found.comparisons, IsEmpty());
  EXPECT_THAT(found.fit.reasons, Contains(HasSubstr("Of the test: ")));
}

TEST(ReadAgainstTested, SaysWhereACurveIsCarriedOnToTheLevel) {
  const TrialTruth truth{.edges = {{.blade = "A", .half_keenness = 30},
                                   {.blade = "C", .is_read = false, .is_tested = true}},
                         .runs_each = 4,
                         .last_checkpoint = 31};
  const Judgement found = judged_both_ways(read_and_tested(truth, 2), {});

  ASSERT_EQ(found.comparisons.size(), 1U);
  EXPECT_TRUE(found.comparisons[0].beyond_what_was_cut);
  EXPECT_THAT(found.cannot_say,
              Contains(HasSubstr("No run of A on sisal was read at 3 times its start")));
}

TEST(ReadAgainstTested, RefusesToCompareWhereNoLevelIsStated) {
  trials::Trial trial = read_and_tested(six_edges(), 1);
  for (trials::Run& run : trial.runs) {
    for (trials::EdgeLife& life : run.edge_lives) life.level.reset();
  }

  EXPECT_THAT([&] { (void)judged_both_ways(trial, {}, {.warmup = 100, .draws = 40}); },
              ThrowsMessage<std::logic_error>(HasSubstr("what failing the test means")));
}

// Truth: cuts to 3 times the start, 40 x 2^(1/0.6) of A against 90 x 2^(1/0.8) of C.
TEST(ReadAgainstTested, FindsTheRatioThatTheEdgesWereMadeWith) {
  const EdgeTruth a{.blade = "A", .half_keenness = 40, .shape = 0.6};
  const EdgeTruth c{
      .blade = "C", .half_keenness = 90, .shape = 0.8, .is_read = false, .is_tested = true};
  const double truth =
      std::exp(testing::log_cuts_until_failing(c, 3) - testing::log_cuts_until_failing(a, 3));
  int covered = 0;
  constexpr int kTrials = 8;
  for (int t = 0; t < kTrials; ++t) {
    const auto trial = read_and_tested({.edges = {a, c}}, 100 + static_cast<std::uint64_t>(t));
    const Judgement found = judged_both_ways(trial, {});
    ASSERT_EQ(found.comparisons.size(), 1U);
    const Comparison& pair = found.comparisons[0];
    const bool c_first = found.arms[pair.a].arm.blade == "C";
    const double ratio = c_first ? truth : 1 / truth;
    if (pair.ratio.lo95 < ratio && ratio < pair.ratio.hi95) ++covered;
    EXPECT_LT(std::abs(std::log(pair.ratio.median / ratio)), 0.6);
  }

  // Fewer than 6 of 8 has a chance of 0.6 % where each covers with 95 % (binomial).
  EXPECT_GE(covered, 6);
}

}  // namespace
}  // namespace keenfall::verdicts
