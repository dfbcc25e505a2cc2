#include "telling/gathered_answers.h"

#include "telling/said_test.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::telling {
namespace {

using testing::said;
using ::testing::StartsWith;
using verdicts::Judgement;
using verdicts::Verdict;
using verdicts::testing::made_arm;
using verdicts::testing::made_comparison;

// A, B and C on rope, C lasting longest: C against A, C against B and B against A.
Judgement three_pairs(Verdict c_to_a, Verdict c_to_b, Verdict b_to_a) {
  Judgement judgement = verdicts::testing::made_judgement();
  judgement.arms = {
      made_arm("A", "rope", 20), made_arm("B", "rope", 30), made_arm("C", "rope", 40)};
  judgement.comparisons = {made_comparison(2, 0, 2, 0.3, c_to_a),
                           made_comparison(2, 1, 1.3, 0.3, c_to_b),
                           made_comparison(1, 0, 1.1, 0.3, b_to_a)};
  return judgement;
}

std::string gathered(const Judgement& judgement) {
  return said(gathered_by_verdict(judgement, groups_of(judgement).front(), names_of(judgement)));
}

TEST(GatheredAnswers, CountThePairsOfEachVerdictAndTellWhatIsNotToldApartFromTheLongest) {
  EXPECT_EQ(
      gathered(three_pairs(Verdict::longer, Verdict::not_settled, Verdict::practically_the_same)),
      "C lasts longest by the middle of its interval (40 cuts (4.0 m)). Not told apart from "
      "it: B.\n"
      "1 of 3 pairs: longer: C against A.\n"
      "1 of 3 pairs: practically the same: B against A.\n"
      "1 of 3 pairs: not settled.\n");
}

TEST(GatheredAnswers, SayThatTheLongestIsToldApartFromAll) {
  EXPECT_EQ(gathered(three_pairs(Verdict::longer, Verdict::longer, Verdict::longer)),
            "C lasts longest by the middle of its interval (40 cuts (4.0 m)). It is told apart "
            "from every other.\n"
            "3 of 3 pairs: longer: C against A and B; B against A.\n");
}

// A ratio is of draws; its median need not stand the way the middles of the lives do.
TEST(GatheredAnswers, NameWhatIsTheSameAsTheLongestWhicheverStandsFirst) {
  Judgement judgement =
      three_pairs(Verdict::practically_the_same, Verdict::longer, Verdict::longer);
  judgement.comparisons[0].a = 0;
  judgement.comparisons[0].b = 2;
  std::swap(judgement.arms[0], judgement.arms[2]);

  EXPECT_THAT(gathered(judgement),
              StartsWith("C lasts longest by the middle of its interval (40 cuts (4.0 m)). Not "
                         "told apart from it: A.\n"));
}

TEST(GatheredAnswers, NameNoLongestWhereItsCutsAreNotKnownThere) {
  Judgement judgement = three_pairs(Verdict::longer, Verdict::longer, Verdict::longer);
  for (verdicts::Comparison& pair : judgement.comparisons) {
    pair.at = {.what = verdicts::ComparedAt::level, .level = 3};
  }
  ASSERT_NE(judgement.stop_level, 3);

  EXPECT_THAT(gathered(judgement), StartsWith("3 of 3 pairs: longer: "));
}

TEST(GatheredAnswers, LookForTheLongestAmongThoseWhoseCutsAreKnown) {
  Judgement judgement = three_pairs(Verdict::longer, Verdict::longer, Verdict::longer);
  for (verdicts::Comparison& pair : judgement.comparisons) {
    pair.at = {.what = verdicts::ComparedAt::common_reading, .reading = 400};
  }
  for (const std::size_t arm : {0U, 1U}) {
    judgement.arms[arm].common_reading = judgement.arms[arm].half_keenness;
  }

  EXPECT_THAT(gathered(judgement),
              StartsWith("B lasts longest by the middle of its interval (30 "));
}

}  // namespace
}  // namespace keenfall::telling
