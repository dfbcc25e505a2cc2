#include "telling/noticed_in_the_runs.h"

#include "telling/said_test.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <string>

namespace keenfall::telling {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using testing::said;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

TEST(NoticedInTheRuns, GathersWhatWasNoticedInOneRunAndCountsWhatIsAlikeInMany) {
  Judgement judgement = made_judgement();
  for (auto& run : judgement.runs) run.remarks = {"stopped at the cap"};
  judgement.runs[0].remarks.insert(judgement.runs[0].remarks.begin(), {"twisted", "paused"});

  EXPECT_THAT(said(noticed_in_the_runs(judgement)),
              AllOf(HasSubstr("Run 1 of A on new matting: twisted; paused\n"),
                    HasSubstr("6 runs: stopped at the cap\n")));
}

TEST(NoticedInTheRuns, NamesRunsThatWereNotUsedAndCountsStruckReadings) {
  Judgement judgement = made_judgement();
  judgement.runs[1].not_used_because = "it was voided: burr left on.";
  judgement.runs[0].readings_struck = 2;

  EXPECT_THAT(said(noticed_in_the_runs(judgement)),
              AllOf(HasSubstr("Run 1 of B on new matting is not used: it was voided"),
                    HasSubstr("2 readings are struck out")));
}

TEST(NoticedInTheRuns, SaysWhatLeavingOutDoubtfulReadingsWouldChange) {
  Judgement judgement = made_judgement();
  judgement.runs[0].readings_doubtful = 1;
  for (verdicts::Comparison& pair : judgement.comparisons) {
    pair.without_doubtful = verdicts::SecondOpinion{};
  }

  EXPECT_THAT(said(noticed_in_the_runs(judgement)),
              HasSubstr("1 reading is marked as doubtful, and used all the same. Left out, no "
                        "verdict would change."));

  judgement.comparisons[0].without_doubtful->agrees = false;

  EXPECT_THAT(said(noticed_in_the_runs(judgement)),
              AllOf(HasSubstr("Left out: "), HasSubstr("would read: not settled")));
}

TEST(NoticedInTheRuns, NamesThePairsOfWhichOnlyDoubtfulReadingsTell) {
  Judgement judgement = made_judgement();
  judgement.runs[0].readings_doubtful = 3;
  judgement.comparisons[0].quick = verdicts::SecondOpinion{};

  EXPECT_THAT(said(noticed_in_the_runs(judgement)), HasSubstr("cannot be compared."));
}

TEST(NoticedInTheRuns, TellsWhatIsRemarkedOnSomePairsOnly) {
  Judgement judgement = made_judgement();
  judgement.comparisons[0].remarks = {"They start differently."};

  EXPECT_EQ(said(noticed_in_the_runs(judgement)),
            "Noticed in the runs\nC against A: They start differently.\n");
}

TEST(NoticedInTheRuns, IsAbsentWhereNothingWas) {
  EXPECT_EQ(noticed_in_the_runs(made_judgement()), std::nullopt);
}

TEST(NoticedInTheRuns, LeavesWhatIsRemarkedOnAllPairsToTheAnswers) {
  Judgement judgement = made_judgement();
  for (const std::size_t pair : {0U, 1U, 2U}) {
    judgement.comparisons[pair].remarks = {"They start differently."};
  }
  judgement.comparisons[1].remarks.push_back("Only here.");

  EXPECT_EQ(said(noticed_in_the_runs(judgement)), "Noticed in the runs\nC against B: Only here.\n");
}

TEST(NoticedInTheRuns, SaysOnceWhatIsRemarkedOnOnePairInTwoMedia) {
  Judgement judgement = made_judgement();
  for (const std::size_t pair : {0U, 3U}) {
    judgement.comparisons[pair].remarks = {"They start differently."};
  }

  EXPECT_EQ(said(noticed_in_the_runs(judgement)),
            "Noticed in the runs\nC against A: They start differently.\n");
}

TEST(NoticedInTheRuns, NamesOnlyThePairsThatCannotDoWithoutDoubtfulReadings) {
  Judgement judgement = made_judgement();
  judgement.runs[0].readings_doubtful = 3;
  for (const std::size_t pair : {0U, 1U}) {
    judgement.comparisons[pair].quick = verdicts::SecondOpinion{};
  }
  judgement.comparisons[1].without_doubtful = verdicts::SecondOpinion{};

  EXPECT_EQ(said(noticed_in_the_runs(judgement)),
            "Noticed in the runs\n3 readings are marked as doubtful, and used all the same. Left "
            "out, no verdict would change. Without them, C against A on new matting cannot be "
            "compared.\n");
}

}  // namespace
}  // namespace keenfall::telling
