#include "cli/answers_text.h"

#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace keenfall::cli {
namespace {

using telling::answers_to;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

// One comparison, in one medium.
Judgement one_pair() {
  Judgement judgement = made_judgement();
  judgement.arms.resize(3);
  judgement.comparisons.resize(1);
  judgement.media.reset();
  judgement.runs.clear();
  return judgement;
}

TEST(AnswersText, BeginsASingleAnswerWithItsMedium) {
  EXPECT_THAT(answers_text(answers_to(one_pair()), {}),
              StartsWith("On new matting, C stays keen 3.1 times as long as A"));
}

TEST(AnswersText, ListsSeveralBelowTheirMediumAndThenWhatHoldsAcrossMedia) {
  const std::string text = answers_text(answers_to(made_judgement()), {});

  EXPECT_THAT(text, StartsWith("On new matting:\n  C stays keen 3.1 times as long as A"));
  EXPECT_THAT(text, HasSubstr("\nAcross media:\n  The gap between the blades closes"));
  EXPECT_THAT(text, HasSubstr("\nThese blades, not their steels: one specimen each.\n"));
}

TEST(AnswersText, SetsRemarksBelowTheAnswersOfTheirMedium) {
  Judgement judgement = one_pair();
  judgement.comparisons.front().remarks = {"They start differently."};

  EXPECT_THAT(answers_text(answers_to(judgement), {}), HasSubstr("\n  They start differently.\n"));
}

TEST(AnswersText, LetsNoNameSteerTheTerminal) {
  Judgement judgement = one_pair();
  judgement.arms[0].arm.blade = "\x1b[2J";
  judgement.arms[0].arm.medium.name = "rope \x1b[2J";

  EXPECT_THAT(answers_text(answers_to(judgement), {}), Not(HasSubstr("\x1b")));
}

TEST(AnswersText, LetsNoUnitSteerTheTerminal) {
  Judgement judgement = one_pair();
  judgement.unit = "\x1b[2Jµm";
  judgement.comparisons[0].at = {.what = verdicts::ComparedAt::common_reading, .reading = 400};

  EXPECT_THAT(answers_text(answers_to(judgement), {.width = 120, .unicode = false}),
              HasSubstr("to reach 400 ?[2Jum"));
}

TEST(AnswersText, SaysFirstThatThereIsNoVerdictAndThenWhy) {
  Judgement judgement = made_judgement();
  judgement.fit.usable = false;
  judgement.fit.reasons = {"R-hat is 1.2."};

  EXPECT_EQ(answers_text(answers_to(judgement), {}),
            "No verdict: the fit is not usable.\n  R-hat is 1.2.\n");
}

TEST(AnswersText, ListsTenArmsAtMostWhereNothingIsCompared) {
  Judgement judgement = made_judgement();
  judgement.comparisons.clear();
  judgement.arms.resize(15, judgement.arms.front());

  const std::string text = answers_text(answers_to(judgement), {.width = 120});

  EXPECT_EQ(std::ranges::count(text, '\n'), 10 + 1 + 1);  // arms, why, what the words mean
  EXPECT_THAT(text, HasSubstr("\nNothing is compared"));
}

}  // namespace
}  // namespace keenfall::cli
