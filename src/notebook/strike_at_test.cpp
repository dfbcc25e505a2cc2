#include "notebook/strike.h"

#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::ANotebook;

class StrikingByPlaces : public ANotebook {
 protected:
  void SetUp() override { ASSERT_TRUE(take(notebook_, a_trial(), {}, next())); }

  [[nodiscard]] std::string refusal(const StrikeAt& request) {
    const auto struck = strike_at(notebook_, request, next());
    EXPECT_FALSE(struck);
    EXPECT_EQ(notebook_.journal().size(), 1U);
    return struck ? "" : struck.error().sentence;
  }

  Notebook notebook_ = made();
};

TEST_F(StrikingByPlaces, TakesTheOneReadingThatIsMeant) {
  trials::Trial expected = a_trial();
  expected.runs[1].readings[2].struck_reason = "thread slipped";

  const auto struck = strike_at(
      notebook_, {.trial = "matting", .run = 1, .reading = 2, .reason = "thread slipped"}, next());

  ASSERT_TRUE(struck);
  EXPECT_EQ(struck->readings, 1U);
  EXPECT_EQ(struck->voided_runs, 0U);
  EXPECT_EQ(struck->run_words, "run 1 of B on new matting");
  EXPECT_TRUE(struck->entry.what.starts_with("strike one reading at "));
  EXPECT_EQ(*kept_trial(notebook_, "matting"), expected);
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(StrikingByPlaces, TakesAllReadingsAfterSoManyCuts) {
  trials::Trial expected = a_trial();
  std::size_t meant = 0;
  for (trials::Reading& reading : expected.runs[1].readings) {
    if (reading.cuts != 0) continue;
    reading.struck_reason = "burr";
    ++meant;
  }

  const auto struck =
      strike_at(notebook_, {.trial = "matting", .run = 1, .cuts = 0, .reason = "burr"}, next());

  ASSERT_TRUE(struck);
  EXPECT_GT(meant, 0U);
  EXPECT_EQ(struck->readings, meant);
  EXPECT_EQ(*kept_trial(notebook_, "matting"), expected);
}

TEST_F(StrikingByPlaces, VoidsTheRunWhereNeitherIsSaid) {
  trials::Trial expected = a_trial();
  expected.runs[0].voided_reason = "another stone";

  const auto struck =
      strike_at(notebook_, {.trial = "matting", .run = 0, .reason = "another stone"}, next());

  ASSERT_TRUE(struck);
  EXPECT_EQ(struck->voided_runs, 1U);
  EXPECT_EQ(*kept_trial(notebook_, "matting"), expected);
}

// Runs of one name in several arms are told apart by their place alone.
TEST_F(StrikingByPlaces, ChangesNothingWhereThePlaceIsNone) {
  EXPECT_EQ(refusal({.trial = "matting", .run = 99, .reason = "burr"}),
            "The trial matting has no such run.");
  EXPECT_EQ(refusal({.trial = "rope", .run = 0, .reason = "burr"}),
            "The trial rope has no such run.");
  EXPECT_EQ(refusal({.trial = "matting", .run = 1, .reading = 99, .reason = "burr"}),
            "There is no reading 99 in run 1 of B on new matting.");
  EXPECT_EQ(refusal({.trial = "matting", .run = 1, .cuts = 7.25, .reason = "burr"}),
            "There is no reading after 7.25 cuts in run 1 of B on new matting.");
  EXPECT_EQ(refusal({.trial = "matting", .run = 1, .reading = 0, .reason = " "}),
            "A reading is struck out with a reason.");
}

TEST_F(StrikingByPlaces, StrikesNothingTwice) {
  const StrikeAt reading{.trial = "matting", .run = 1, .reading = 0, .reason = "burr"};
  const StrikeAt run{.trial = "matting", .run = 0, .reason = "another stone"};
  ASSERT_TRUE(strike_at(notebook_, reading, next()));
  ASSERT_TRUE(strike_at(notebook_, run, next()));

  const auto again = strike_at(notebook_, reading, next());
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().sentence,
            "That reading of run 1 of B on new matting is struck out already.");
  const auto voided = strike_at(notebook_, run, next());
  ASSERT_FALSE(voided);
  EXPECT_EQ(voided.error().sentence, "That run is voided already: another stone.");
}

}  // namespace
}  // namespace keenfall::notebook
