#include "telling/title.h"

#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::telling {
namespace {

using verdicts::Judgement;
using verdicts::testing::made_judgement;

TEST(Title, NamesTheReadingItsUnitAndTheRuns) {
  EXPECT_EQ(title(made_judgement()), "Thread push reading, gf; 36 runs");
}

TEST(Title, SaysOneRun) {
  Judgement judgement = made_judgement();
  judgement.arms.resize(1);
  judgement.arms[0].runs = 1;

  EXPECT_EQ(title(judgement), "Thread push reading, gf; 1 run");
}

TEST(Title, CountsTheRunsThatAreNotUsed) {
  Judgement judgement = made_judgement();
  judgement.runs[0].not_used_because = "it was voided: burr left on.";

  EXPECT_EQ(title(judgement), "Thread push reading, gf; 37 runs, 1 of them not used");
}

TEST(Title, CountsTheRunsOfEdgesOfWhichNoneCouldBeUsed) {
  Judgement judgement = made_judgement();
  judgement.runs_of_arms_not_judged.resize(2);

  EXPECT_EQ(title(judgement), "Thread push reading, gf; 38 runs, 2 of them not used");
}

TEST(Title, SaysThatNoEdgeWasCutWhereASimulatorMadeTheRuns) {
  Judgement judgement = made_judgement();
  judgement.runs[0].remarks.emplace_back(trials::kSimulatedNote);

  EXPECT_EQ(title(judgement), "Thread push reading, gf; 36 runs; simulated, no edge was cut");
}

TEST(Details, NameTheThreadAndTheWayOfCuttingWhereItIsOne) {
  Judgement judgement = made_judgement();
  judgement.thread = "cotton 40";
  const std::string method = in_words(judgement.arms[0].arm.method);
  EXPECT_EQ(details(judgement), "Thread: cotton 40. Cut: " + method + ".");

  judgement.arms[0].arm.method.cut_length_mm = 60;

  EXPECT_EQ(details(judgement), "Thread: cotton 40.");
}

TEST(Title, TakesTheNameOfAKindWithoutWords) {
  Judgement judgement = made_judgement();
  judgement.kind = {.name = "tomato", .unit = "mm"};

  EXPECT_THAT(title(judgement), ::testing::StartsWith("Tomato, gf; "));
}

}  // namespace
}  // namespace keenfall::telling
