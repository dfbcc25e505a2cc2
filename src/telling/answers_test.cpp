#include "telling/answers.h"

#include "telling/said_test.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::telling {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using testing::said;
using ::testing::SizeIs;
using verdicts::Judgement;
using verdicts::Verdict;
using verdicts::testing::made_arm;
using verdicts::testing::made_comparison;
using verdicts::testing::made_judgement;

TEST(Answers, SayOnceWhatIsRemarkedOnEveryPairOfAMedium) {
  Judgement judgement = made_judgement();
  for (std::size_t i = 0; i < 3; ++i)
    judgement.comparisons[i].remarks = {"They start differently."};

  const std::string text = said(answers_to(judgement));

  EXPECT_EQ(text.find("They start differently."), text.rfind("They start differently."));
  EXPECT_LT(text.find("They start differently."), text.find("On uplifted matting:"));
}

TEST(Answers, GroupByMediumAndPutTheLargestRatioFirst) {
  const std::string text = said(answers_to(made_judgement()));

  EXPECT_LT(text.find("On new matting:"), text.find("On uplifted matting:"));
  EXPECT_LT(text.find("C stays keen 3.1"), text.find("C stays keen 2.2"));
  EXPECT_LT(text.find("not settled: ratio 1.2"), text.find("practically the same: ratio 1.1"));
}

TEST(Answers, SayOnceThatTheyAreAboutTheseBlades) {
  const std::string text = said(answers_to(made_judgement()));
  const std::string claim = "These blades, not their steels: one specimen each.";

  EXPECT_EQ(text.find(claim), text.rfind(claim));
  EXPECT_NE(text.find(claim), std::string::npos);
}

TEST(Answers, GiveNoVerdictFromAFitThatIsNotUsable) {
  Judgement judgement = made_judgement();
  judgement.fit.usable = false;
  judgement.fit.reasons = {"R-hat is 1.2."};

  EXPECT_THAT(
      said(answers_to(judgement)),
      AllOf(HasSubstr("No verdict"), HasSubstr("R-hat is 1.2."), Not(HasSubstr("stays keen"))));
}

TEST(Answers, TellWhatASingleArmLacks) {
  Judgement judgement = made_judgement();
  judgement.arms.resize(1);
  judgement.media.reset();
  judgement.comparisons.clear();

  EXPECT_THAT(
      said(answers_to(judgement)),
      AllOf(HasSubstr("A stays keen for 34 cuts (3.4 m), 95 %"), HasSubstr("second blade")));
}

TEST(Answers, SayWhatTheirWordsMean) {
  Judgement judgement = made_judgement();
  judgement.worth_it_margin = 1.25;
  EXPECT_THAT(said(answers_to(judgement)),
              HasSubstr("An edge stays keen until its reading has doubled. Worth having means "
                        "1.25 times as long or more."));

  judgement.kind.keener_when = trials::KeenerWhen::higher;
  EXPECT_THAT(said(answers_to(judgement)), HasSubstr("until its reading has fallen to half."));

  for (auto& pair : judgement.comparisons) pair.at = {.what = verdicts::ComparedAt::test};
  judgement.test = verdicts::TestJudged{};
  EXPECT_THAT(said(answers_to(judgement)), Not(HasSubstr("An edge stays keen")));
}

TEST(Answers, GatherManyComparisonsByVerdict) {
  Judgement judgement = made_judgement();
  judgement.arms.clear();
  judgement.comparisons.clear();
  for (int i = 0; i < 24; ++i) {
    judgement.arms.push_back(made_arm("long name " + std::to_string(i), "rope", 20 + 10 * i));
  }
  for (std::size_t a = 1; a < 24; ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      judgement.comparisons.push_back(made_comparison(a, b, 2, 0.4, Verdict::longer));
    }
  }

  const std::string text = said(answers_to(judgement));

  EXPECT_THAT(text, HasSubstr("276 of 276 pairs: longer: "));
  EXPECT_LT(std::ranges::count(text, '\n'), 40);
}

TEST(Answers, PointToTheComparisonThatEachSentenceIsAbout) {
  const Answers answers = answers_to(made_judgement());

  ASSERT_THAT(answers.media, SizeIs(2));
  std::vector<std::size_t> on_uplifted;
  for (const Answer& answer : answers.media[1].answers) on_uplifted.push_back(answer.comparison);
  EXPECT_EQ(on_uplifted, (std::vector<std::size_t>{5, 3, 4}));
  EXPECT_EQ(answers.media[1].group, 1U);
}

TEST(Answers, LeaveOutMediaInWhichNothingIsCompared) {
  Judgement judgement = made_judgement();
  judgement.comparisons.erase(judgement.comparisons.begin(), judgement.comparisons.begin() + 3);

  const Answers answers = answers_to(judgement);

  ASSERT_THAT(answers.media, SizeIs(1));
  EXPECT_EQ(answers.media[0].on, "On uplifted matting");
  EXPECT_EQ(answers.media[0].group, 1U);
}

TEST(Answers, PutTheGatheredOnesThatAreNotSettledLast) {
  Judgement judgement = made_judgement();
  judgement.comparisons.resize(1);
  judgement.comparisons.resize(11, made_comparison(1, 0, 2, 0.4, Verdict::longer));
  judgement.comparisons.front().verdict = Verdict::not_settled;

  const MediumAnswers on_new = answers_to(judgement).media.front();

  EXPECT_THAT(on_new.answers, IsEmpty());
  EXPECT_EQ(text_of(on_new.gathered.back()), "1 of 11 pairs: not settled.");
  EXPECT_EQ(on_new.gathered.back().left_out, "how many more runs each needs");
}

TEST(Answers, SayNothingElseWhereThereIsNone) {
  Judgement judgement = made_judgement();
  judgement.comparisons.clear();

  const Answers answers = answers_to(judgement);

  ASSERT_TRUE(answers.instead);
  EXPECT_THAT(answers.instead->lasting, SizeIs(6));
  EXPECT_EQ(text_of(answers.instead->why),
            "Nothing is compared: no two of these were cut in the same medium by the same method.");
  EXPECT_THAT(answers.media, IsEmpty());
  EXPECT_THAT(answers.claim.words, IsEmpty());
}

TEST(Answers, SayWhetherTheyAreAboutTheSteels) {
  Judgement judgement = made_judgement();
  const auto claim = [&judgement] { return text_of(answers_to(judgement).claim); };
  for (auto& arm : judgement.arms) arm.specimens = 2;
  EXPECT_EQ(claim(), "These blades, not their steels: that takes several specimens of each.");

  judgement.comparisons[0].claim_about = verdicts::ClaimAbout::the_steels;
  EXPECT_EQ(claim(),
            "About the steels where several specimens of both were cut, else about these blades "
            "only.");

  for (auto& pair : judgement.comparisons) pair.claim_about = verdicts::ClaimAbout::the_steels;
  EXPECT_EQ(claim(), "This is about the steels: several specimens of each were cut.");
}

TEST(Answers, TellHowLongASingleTestedArmPasses) {
  Judgement judgement = made_judgement();
  judgement.arms.resize(1);
  judgement.media.reset();
  judgement.comparisons.clear();
  judgement.test = verdicts::TestJudged{.words = "slices newsprint"};
  judgement.arms[0].test = judgement.arms[0].half_keenness;
  judgement.arms[0].half_keenness.reset();
  judgement.arms[0].stop_level.reset();

  const Answers answers = answers_to(judgement);

  EXPECT_THAT(
      said(answers),
      HasSubstr("On new matting, A passes its test for 34 cuts (3.4 m), 95 % interval 28 to "
                "42.\n"));
  EXPECT_THAT(answers.terms.words, IsEmpty());
}

}  // namespace
}  // namespace keenfall::telling
