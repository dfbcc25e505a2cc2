#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>

#include <iterator>
#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::ANotebook;

constexpr const char* kReason = "digits swapped";

class CorrectingAReading : public ANotebook {
 protected:
  void SetUp() override { ASSERT_TRUE(take(notebook_, a_trial(), {}, next())); }

  // The trial after reading 2 of its run 1 was corrected to 104.
  static trials::Trial corrected() {
    trials::Trial trial = a_trial();
    std::vector<trials::Reading>& readings = trial.runs[1].readings;
    trials::Reading instead = readings[2];
    instead.reading = 104;
    instead.doubtful_reason.reset();
    readings[2].struck_reason = kReason;
    readings.insert(std::next(readings.begin(), 3), instead);
    return trial;
  }

  static StrikeAt a_correction() {
    return {.trial = "matting",
            .run = 1,
            .reading = 2,
            .reason = kReason,
            .instead = CorrectedReading{.reading = 104}};
  }

  [[nodiscard]] std::string refusal(const StrikeAt& request) {
    const auto struck = strike_at(notebook_, request, next());
    EXPECT_FALSE(struck);
    EXPECT_EQ(notebook_.journal().size(), 1U);
    EXPECT_EQ(*kept_trial(notebook_, "matting"), a_trial());
    return struck ? "" : struck.error().sentence;
  }

  Notebook notebook_ = made();
};

TEST_F(CorrectingAReading, PutsItBesideTheStruckOneInOneEntry) {
  const auto struck = strike_at(notebook_, a_correction(), next());

  ASSERT_TRUE(struck) << struck.error().sentence;
  EXPECT_EQ(struck->entry.entry, 2);
  EXPECT_EQ(struck->instead, "104 gf");
  EXPECT_TRUE(struck->entry.what.starts_with("correct ")) << struck->entry.what;
  EXPECT_TRUE(struck->entry.what.ends_with(" in run 1 of B on new matting, trial matting"))
      << struck->entry.what;
  EXPECT_EQ(struck->entry.why, kReason);
  EXPECT_EQ(*kept_trial(notebook_, "matting"), corrected());
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(CorrectingAReading, IsUndoneAsAWholeAndDoneAgain) {
  ASSERT_TRUE(strike_at(notebook_, a_correction(), next()));

  ASSERT_TRUE(notebook_.undo(2, next()));
  EXPECT_EQ(*kept_trial(notebook_, "matting"), a_trial());

  ASSERT_TRUE(notebook_.undo(3, next()));
  EXPECT_EQ(*kept_trial(notebook_, "matting"), corrected());
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(CorrectingAReading, CanBeCorrectedOnceMore) {
  ASSERT_TRUE(strike_at(notebook_, a_correction(), next()));
  StrikeAt again = a_correction();
  EXPECT_FALSE(strike_at(notebook_, again, next()));  // that one is struck out
  again.reading = 3;
  again.instead->reading = 105;

  ASSERT_TRUE(strike_at(notebook_, again, next()));

  const trials::Trial kept = *kept_trial(notebook_, "matting");
  EXPECT_EQ(kept.runs[1].readings[3].struck_reason, kReason);
  EXPECT_EQ(kept.runs[1].readings[4].reading, 105);
  const auto undone = notebook_.undo(2, next());
  ASSERT_FALSE(undone);  // the later correction rests on it
  EXPECT_NE((undone.error().sentence + undone.error().accepted).find('3'), std::string::npos);
}

// Whoever mends the table too, and takes it again, has the same trial.
TEST_F(CorrectingAReading, KnowsTheMendedTableAgain) {
  ASSERT_TRUE(strike_at(notebook_, a_correction(), next()));
  trials::Trial mended = a_trial();
  mended.runs[1].readings[2].reading = 104;
  mended.runs[1].readings[2].doubtful_reason.reset();

  const auto taken = take(notebook_, mended, {}, next());

  ASSERT_TRUE(taken);
  EXPECT_FALSE(taken->entry);
  EXPECT_EQ(*kept_trial(notebook_, "matting"), corrected());
}

TEST_F(CorrectingAReading, KeepsItInTheUnitItWasTypedIn) {
  StrikeAt in_newtons = a_correction();
  in_newtons.instead = CorrectedReading{.reading = 1.02, .unit = "N"};

  const auto struck = strike_at(notebook_, in_newtons, next());

  ASSERT_TRUE(struck);
  EXPECT_EQ(struck->instead, "1.02 N");
  const trials::Trial kept = *kept_trial(notebook_, "matting");
  const trials::Reading& instead = kept.runs[1].readings[3];
  EXPECT_EQ(instead.reading, 1.02);
  ASSERT_EQ(kept.series.size(), a_trial().series.size() + 1);
  EXPECT_EQ(instead.series, kept.series.size() - 1);
  EXPECT_EQ(kept.series.back().unit, "N");
  EXPECT_EQ(kept.series.back().thread, kept.series[kept.runs[1].readings[2].series].thread);
  EXPECT_TRUE(check(notebook_).empty());
  ASSERT_TRUE(notebook_.undo(2, next()));
  EXPECT_EQ(*kept_trial(notebook_, "matting"), a_trial());
}

TEST_F(CorrectingAReading, TakesAMassAsTheForceItWeighs) {
  StrikeAt in_grams = a_correction();
  in_grams.instead = CorrectedReading{.reading = 104, .unit = "grams"};

  const auto struck = strike_at(notebook_, in_grams, next());

  ASSERT_TRUE(struck);
  EXPECT_EQ(struck->instead, "104 gf");
  EXPECT_EQ(*kept_trial(notebook_, "matting"), corrected());
}

TEST_F(CorrectingAReading, ChangesNothingWhereItCannotBe) {
  StrikeAt request = a_correction();
  request.instead->reading = 0;
  EXPECT_EQ(refusal(request), "A thread push reading of 0 cannot be.");
  request.instead->reading = a_trial().runs[1].readings[2].reading;
  EXPECT_TRUE(refusal(request).starts_with("It reads "));
  request.instead = CorrectedReading{.reading = 104, .unit = "mm"};
  EXPECT_EQ(refusal(request), "A thread push reading cannot be in \"mm\".");
  request = a_correction();
  request.reason = " ";
  EXPECT_EQ(refusal(request), "A reading is struck out with a reason.");
  request = a_correction();
  request.reading.reset();
  EXPECT_EQ(refusal(request), "A reading is corrected, and it is not said which.");
}

TEST_F(CorrectingAReading, FindsTheOneThatIsNamed) {
  const trials::Reading wrong = a_trial().runs[1].readings[2];
  StrikeRequest request{.trial = "matting",
                        .blade = "B",
                        .run = "1",
                        .reason = kReason,
                        .instead = CorrectedReading{.reading = 104}};
  EXPECT_EQ(strike(notebook_, request, next()).error().sentence,
            "A reading is corrected, and it is not said which.");
  request.cuts = wrong.cuts;
  request.reading = wrong.reading;

  const auto struck = strike(notebook_, request, next());

  ASSERT_TRUE(struck) << struck.error().sentence;
  EXPECT_EQ(*kept_trial(notebook_, "matting"), corrected());
}

TEST_F(CorrectingAReading, CorrectsNoneWhereSeveralFit) {
  trials::Trial twice = a_trial();
  twice.name = "twice";
  twice.runs[1].readings[3].cuts = 10;
  ASSERT_TRUE(take(notebook_, twice, {}, next()));
  StrikeRequest request{.trial = "twice",
                        .blade = "B",
                        .run = "1",
                        .cuts = 10,
                        .reason = kReason,
                        .instead = CorrectedReading{.reading = 104}};

  const auto struck = strike(notebook_, request, next());

  ASSERT_FALSE(struck);
  EXPECT_EQ(struck.error().sentence,
            "Several readings of run 1 of B on new matting are after 10 cuts: 125 at mid, 135.5 at "
            "mid. One is corrected at a time.");
  EXPECT_EQ(*kept_trial(notebook_, "twice"), twice);
}

}  // namespace
}  // namespace keenfall::notebook
