#include "exchange/blade_statements.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using testing::HasSubstr;

TEST(Blades, HaveTheSteelAndHardnessTheirRowsSay) {
  const auto trial = taken(with_columns("steel,hardness_hrc", "A,s,1,0,9,C75S,58\nA,s,2,0,9,,\n"));

  ASSERT_EQ(trial.blades.size(), 1U);
  EXPECT_EQ(
      trial.blades[0],
      (trials::Blade{.name = "A", .steel = "C75S", .hardness = trials::Hardness{.reading = 58}}));
}

TEST(Blades, HaveAHardnessForEachSpecimenNamed) {
  const auto trial =
      taken(with_columns("specimen,hardness_hrc", "A,s,1,0,9,I,58\nA,s,2,0,9,II,60\n"));

  ASSERT_EQ(trial.blades.at(0).specimens.size(), 2U);
  EXPECT_EQ(trial.blades[0].specimens[1].hardness->reading, 60);
  EXPECT_EQ(trial.blades[0].hardness, std::nullopt);
}

TEST(Blades, CannotHaveTwoSteels) {
  const auto problems = problems_in(
      with_columns("steel", "A,s,1,0,9,C75S\nA,s,2,0,9,X90CrMoV18\nA,s,3,0,9,X90CrMoV18\n"));

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].kind, base::ProblemKind::conflicting);
  EXPECT_THAT(base::in_words(problems[0]),
              HasSubstr("t.csv, line 3, column steel: Blade “A” has the steel “C75S” in line 2 and "
                        "“X90CrMoV18” here."));
}

TEST(Blades, CannotHaveTwoSteelsWithinARun) {
  EXPECT_THAT(problem_in(with_columns("steel", "A,s,1,0,9,C75S\nA,s,1,1,9,X90CrMoV18\n")),
              HasSubstr("has the steel “C75S” in line 2 and “X90CrMoV18” here."));
}

TEST(Blades, CannotHaveTwoHardnessesWithoutSpecimens) {
  EXPECT_THAT(
      problem_in(with_columns("hardness_hrc", "A,s,1,0,9,58\nA,s,2,0,9,60\n")),
      HasSubstr("has the hardness “58” in line 2 and “60” here. One blade has one hardness; "
                "give the second its own name, or name the specimens."));
}

}  // namespace
}  // namespace keenfall::exchange
