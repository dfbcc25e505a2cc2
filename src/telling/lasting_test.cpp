#include "telling/lasting.h"

#include "verdicts/made_judgement_test.h"

#include <gtest/gtest.h>

namespace keenfall::telling {
namespace {

using verdicts::Judgement;
using verdicts::testing::made_judgement;

TEST(RunsLasting, IsToHalfKeennessUnlessComparedElsewhere) {
  EXPECT_EQ(runs_lasting_words(made_judgement()), "cuts to half keenness");
  EXPECT_EQ(lasting_words(made_judgement(), {.what = verdicts::ComparedAt::level, .level = 4}),
            "cuts to reach 4 times the start reading");
}

TEST(RunsLasting, SaysOfEachMediumWhereItIsComparedWhereTheyDiffer) {
  Judgement judgement = made_judgement();
  for (const std::size_t pair : {3U, 4U, 5U}) {
    judgement.comparisons[pair].at = {.what = verdicts::ComparedAt::common_reading, .reading = 620};
  }
  judgement.arms.push_back(verdicts::testing::made_arm("A", "cardboard", 50));

  EXPECT_EQ(runs_lasting_words(judgement),
            "cuts to half keenness (new matting, cardboard); to reach 620 gf (uplifted matting)");
}

TEST(RunsLasting, OfNoArmsSaysWhatIsCounted) { EXPECT_EQ(runs_lasting_words({}), "cuts"); }

}  // namespace
}  // namespace keenfall::telling
