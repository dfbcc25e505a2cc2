#include "telling/answer_sentences.h"

#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::telling {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;
using verdicts::Judgement;
using verdicts::Verdict;
using verdicts::testing::made_arm;
using verdicts::testing::made_comparison;
using verdicts::testing::made_judgement;

// Two blades in one medium and the one comparison between them.
Judgement one_pair(double ratio, double log_half_width, Verdict verdict) {
  Judgement judgement = made_judgement();
  judgement.arms = {made_arm("A", "rope", 34), made_arm("C", "rope", 34 * ratio)};
  judgement.comparisons = {made_comparison(1, 0, ratio, log_half_width, verdict)};
  judgement.media.reset();
  judgement.runs.clear();
  return judgement;
}

std::string sentence_of(const Judgement& judgement) {
  return text_of(answer_sentence(judgement, judgement.comparisons.front(), names_of(judgement)));
}

TEST(AnswerSentences, SayHowManyTimesAsLongHowSureAndWhetherItIsWorthHaving) {
  EXPECT_EQ(sentence_of(one_pair(3.2, 0.3, Verdict::longer_and_worth_having)),
            "C stays keen 3.2 times as long as A (95 % interval 2.3 to 4.5): longer, and "
            "worth having. 109 cuts (10.9 m) against 34 (3.4 m).");
}

TEST(AnswerSentences, LeaveTheMetresOutWhereTheLengthOfACutIsNotKnown) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer_and_worth_having);
  for (auto& arm : judgement.arms) arm.arm.method.cut_length_mm.reset();

  EXPECT_THAT(sentence_of(judgement), HasSubstr("109 cuts against 34."));
}

TEST(AnswerSentences, CallEdgesPracticallyTheSameByTheNinetyPercentInterval) {
  EXPECT_EQ(sentence_of(one_pair(1.1, 0.15, Verdict::practically_the_same)),
            "C and A are practically the same: ratio 1.1 (90 % interval 0.95 to 1.3, "
            "inside the worth-it margin 1.5).");
}

TEST(AnswerSentences, SayHowManyMoreRunsWouldSettleIt) {
  Judgement judgement = one_pair(1.2, 0.45, Verdict::not_settled);
  judgement.comparisons[0].further_runs = verdicts::FurtherRuns{.runs_each = 8};

  EXPECT_EQ(sentence_of(judgement),
            "C against A is not settled: ratio 1.2, could be 0.72 to 2.0 (95 % interval). "
            "About 8 more runs each would probably settle it.");
}

TEST(AnswerSentences, SayWhenMoreThanFortyRunsWouldBeNeeded) {
  Judgement judgement = one_pair(1.2, 0.45, Verdict::not_settled);
  judgement.comparisons[0].further_runs = verdicts::FurtherRuns{};

  EXPECT_THAT(sentence_of(judgement), HasSubstr("more than 40 more runs each"));
}

TEST(AnswerSentences, SayAtLeastWhereTheLongerOneWasNotCutFarEnough) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer_and_worth_having);
  judgement.arms[1].half_keenness->beyond_what_was_cut = true;
  judgement.arms[1].half_keenness->runs_that_reached = 0;
  judgement.arms[1].longest_run_cuts = 60;
  judgement.comparisons[0].beyond_what_was_cut = true;

  EXPECT_THAT(sentence_of(judgement),
              AllOf(HasSubstr("C stays keen at least 2.3 times as long as A"),
                    HasSubstr("At least 89 cuts (8.9 m) against 34 (3.4 m)."),
                    HasSubstr("carried on past what was cut, points to 3.2")));
}

TEST(AnswerSentences, AreNotSureOfMoreCutsWhereARunWasSeenToGetThere) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer_and_worth_having);
  judgement.arms[1].half_keenness->beyond_what_was_cut = true;
  judgement.arms[1].half_keenness->runs_that_reached = 1;
  judgement.arms[1].longest_run_cuts = 60;
  judgement.comparisons[0].beyond_what_was_cut = true;

  EXPECT_THAT(sentence_of(judgement), HasSubstr("Probably more than 60 cuts (6.0 m) against 34"));
}

TEST(AnswerSentences, SayThatNeitherWasCutThatFar) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer_and_worth_having);
  for (auto& arm : judgement.arms) {
    arm.half_keenness->beyond_what_was_cut = true;
    arm.longest_run_cuts = 20;
  }
  judgement.arms[1].longest_run_cuts = 60;
  judgement.comparisons[0].beyond_what_was_cut = true;

  EXPECT_THAT(sentence_of(judgement),
              HasSubstr("Neither was cut that far: 60 cuts (6.0 m) at most."));
}

TEST(AnswerSentences, DoNotRepeatTheRatioWhereItRestsOnACurveCarriedOn) {
  Judgement judgement = one_pair(1.1, 0.15, Verdict::practically_the_same);
  judgement.arms[1].half_keenness->beyond_what_was_cut = true;
  judgement.comparisons[0].beyond_what_was_cut = true;

  EXPECT_THAT(sentence_of(judgement),
              AllOf(HasSubstr("This rests on a curve carried on past what was cut."),
                    Not(HasSubstr("points to"))));
}

TEST(AnswerSentences, SayBothVerdictsWhereTheyDiffer) {
  Judgement judgement = one_pair(1.2, 0.45, Verdict::not_settled);
  judgement.comparisons[0].single_verdict = Verdict::longer;

  EXPECT_THAT(sentence_of(judgement),
              HasSubstr("Asked alone it would read: longer; beside 2 other comparisons "
                        "in this medium its interval is wider"));
}

TEST(AnswerSentences, SayWhenAnotherSeedMightReadOtherwise) {
  Judgement judgement = one_pair(1.2, 0.45, Verdict::not_settled);
  judgement.comparisons[0].near_boundary = true;

  EXPECT_THAT(sentence_of(judgement), HasSubstr("another seed might read otherwise"));
}

TEST(AnswerSentences, SayAtWhichReadingEdgesWereCompared) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer_and_worth_having);
  judgement.comparisons[0].at = {.what = verdicts::ComparedAt::common_reading, .reading = 400};

  EXPECT_THAT(sentence_of(judgement),
              HasSubstr("C takes 3.2 times as many cuts as A to reach 400 gf"));
}

TEST(AnswerSentences, SayThatReadingsFallWhereHigherIsKeener) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer_and_worth_having);
  judgement.kind.keener_when = trials::KeenerWhen::higher;
  judgement.comparisons[0].at = {.what = verdicts::ComparedAt::level, .level = 4};

  EXPECT_THAT(sentence_of(judgement), HasSubstr("to fall to 1/4 of the start reading"));
}

TEST(AnswerSentences, HaveWordsForEveryVerdict) {
  for (const Verdict verdict : {Verdict::longer_and_worth_having,
                                Verdict::longer,
                                Verdict::longer_but_too_little_to_matter,
                                Verdict::practically_the_same,
                                Verdict::shorter_but_too_little_to_matter,
                                Verdict::shorter,
                                Verdict::shorter_by_enough_to_matter,
                                Verdict::not_settled}) {
    const std::string sentence = sentence_of(one_pair(1.3, 0.2, verdict));

    EXPECT_THAT(sentence, StartsWith("C ")) << in_words(verdict);
    EXPECT_THAT(sentence, Not(HasSubstr("  ")));
  }
}

TEST(AnswerSentences, TellEdgesOfOneBladeApartByWhatDiffers) {
  Judgement judgement = one_pair(1.2, 0.45, Verdict::not_settled);
  judgement.arms[0].arm.blade = "C";
  judgement.arms[0].arm.edge.bevel_angle = trials::PerSideAngle{15};

  EXPECT_THAT(sentence_of(judgement),
              HasSubstr("C (17° per side) against C (15° per side) is not settled"));
}

TEST(AnswerSentences, OfSteelsGiveTheRatioOfThesePiecesBesideIt) {
  Judgement judgement = one_pair(2, 0.3, Verdict::longer);
  judgement.comparisons[0].claim_about = verdicts::ClaimAbout::the_steels;
  judgement.comparisons[0].ratio_these_blades = verdicts::testing::around(2.1, 0.2);

  EXPECT_THAT(sentence_of(judgement),
              HasSubstr("That is about the steels, a further piece of each; of just these pieces "
                        "the ratio is 2.1 (95 % interval 1.7 to 2.6)."));
}

TEST(AnswerSentences, NameBothEndsWhereAnEdgeReadIsComparedWithOneTested) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer_and_worth_having);
  judgement.stop_level = 3;
  judgement.test = verdicts::TestJudged{.words = "slices newsprint", .level = 3};
  judgement.comparisons[0].at = {.what = verdicts::ComparedAt::level, .level = 3};
  judgement.arms[1].test = judgement.arms[1].stop_level;
  judgement.arms[1].stop_level.reset();

  EXPECT_THAT(sentence_of(judgement),
              StartsWith("C takes 3.2 times as many cuts as A to reach 3 times the start "
                         "reading or to fail the test \"slices newsprint\" (95 % interval"));
}

TEST(AnswerSentences, GiveTheVerdictItsTone) {
  const auto verdict_words = [](Verdict verdict) {
    const Judgement judgement = one_pair(1.3, 0.2, verdict);
    return answer_sentence(judgement, judgement.comparisons.front(), names_of(judgement)).words[1];
  };

  EXPECT_EQ(verdict_words(Verdict::longer), (Words{"longer", Tone::settled}));
  EXPECT_EQ(verdict_words(Verdict::practically_the_same),
            (Words{"practically the same", Tone::settled}));
  EXPECT_EQ(verdict_words(Verdict::not_settled), (Words{"not settled", Tone::not_settled}));
}

TEST(AnswerSentences, AdviseToCutFurtherBeforeMoreRunsWhereNothingWasCutSoFar) {
  Judgement judgement = one_pair(2.1, 0.8, Verdict::not_settled);
  judgement.comparisons[0].further_runs = verdicts::FurtherRuns{.runs_each = 11};
  judgement.comparisons[0].beyond_what_was_cut = true;

  EXPECT_THAT(sentence_of(judgement),
              HasSubstr("Cutting further would tell most; without it, about 11 more runs each "
                        "would probably settle it."));
}

TEST(AnswerSentences, NameWhatSpeaksAgainstAVerdict) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer);
  judgement.arms[0].runs = 6;
  judgement.arms[0].runs_that_never_blunt = 3;
  judgement.comparisons[0].run_by_run = verdicts::RunByRun{.ratio = 0.66};
  judgement.comparisons[0].quick =
      verdicts::SecondOpinion{.verdict = Verdict::not_settled, .agrees = false};

  EXPECT_THAT(
      sentence_of(judgement),
      AllOf(HasSubstr("But 3 of 6 runs of A end no blunter than they began, so take it with care."),
            HasSubstr("the runs by themselves, without the joint model, lie the other way round: "
                      "0.66 times."),
            HasSubstr("A second, quicker calculation reads otherwise: not settled.")));
}

TEST(AnswerSentences, SayHowFarEachVerdictGoes) {
  const auto told_as = [](Verdict verdict) { return sentence_of(one_pair(1.3, 0.2, verdict)); };
  const std::string open = "; whether by the worth-it margin of 1.5 is open.";
  const std::string inside = "; 90 % inside the worth-it margin 1.5): ";

  EXPECT_THAT(told_as(Verdict::longer), HasSubstr("): longer" + open));
  EXPECT_THAT(told_as(Verdict::shorter), HasSubstr("): shorter" + open));
  EXPECT_THAT(told_as(Verdict::longer_but_too_little_to_matter),
              HasSubstr(inside + "longer, but too little to matter."));
  EXPECT_THAT(told_as(Verdict::shorter_but_too_little_to_matter),
              HasSubstr(inside + "shorter, but too little to matter."));
  EXPECT_THAT(told_as(Verdict::shorter_by_enough_to_matter),
              HasSubstr("): shorter, by enough to matter."));
}

TEST(AnswerSentences, DoNotDoubtWhatIsNotSettledForEdgesThatNeverBlunt) {
  Judgement judgement = one_pair(1.2, 0.45, Verdict::not_settled);
  judgement.arms[0].runs_that_never_blunt = 3;

  EXPECT_THAT(sentence_of(judgement), Not(HasSubstr("take it with care")));
}

TEST(AnswerSentences, SayWhatRestsOnACurveWhereOnlyTheShorterOneWasNotCutFarEnough) {
  Judgement judgement = one_pair(3.2, 0.3, Verdict::longer_and_worth_having);
  judgement.arms[0].half_keenness->beyond_what_was_cut = true;
  judgement.arms[0].half_keenness->runs_that_reached = 1;
  judgement.comparisons[0].beyond_what_was_cut = true;

  EXPECT_THAT(sentence_of(judgement),
              AllOf(HasSubstr("This rests on a curve carried on past what was cut."),
                    Not(HasSubstr("points to"))));
}

TEST(AnswerSentences, OfSteelsSayWhereThesePiecesGiveTheSameRatio) {
  Judgement judgement = one_pair(2, 0.3, Verdict::longer);
  judgement.comparisons[0].ratio_these_blades = judgement.comparisons[0].ratio;

  EXPECT_THAT(sentence_of(judgement),
              HasSubstr("a further piece of each; of just these pieces the ratio is the same."));
}

TEST(AnswerSentences, SpeakOfTheOneComparisonBesideIt) {
  Judgement judgement = one_pair(1.2, 0.45, Verdict::not_settled);
  judgement.comparisons[0].single_verdict = Verdict::longer;
  judgement.comparisons[0].family_size = 2;

  EXPECT_THAT(sentence_of(judgement),
              HasSubstr("beside another comparison in this medium its interval is wider"));
}

TEST(AnswerSentences, SpeakOfOneMoreRun) {
  Judgement judgement = one_pair(1.2, 0.45, Verdict::not_settled);
  judgement.comparisons[0].further_runs = verdicts::FurtherRuns{.runs_each = 1};

  EXPECT_THAT(sentence_of(judgement), HasSubstr("One more run each would probably settle it."));
}

}  // namespace
}  // namespace keenfall::telling
