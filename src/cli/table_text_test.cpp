#include "cli/table_text.h"

#include "telling/arms_table.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::cli {
namespace {

using telling::arms_table;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

TEST(TableText, IsPlainAsciiWhereTheLookIs) {
  EXPECT_THAT(table_text(arms_table(made_judgement()), {.unicode = false}),
              HasSubstr("108 (88-132)"));
}

TEST(TableText, SetsNamesBelowTheLineOfTheirMedium) {
  EXPECT_THAT(table_text(arms_table(made_judgement()), {}), HasSubstr("\nOn new matting\n  A "));
}

TEST(TableText, PutsTheFootnotesLast) {
  Judgement judgement = made_judgement();
  judgement.arms[2].half_keenness->beyond_what_was_cut = true;

  EXPECT_THAT(table_text(arms_table(judgement), {}), HasSubstr("\n* beyond what was cut"));
  EXPECT_THAT(table_text(arms_table(made_judgement()), {}), Not(HasSubstr("*")));
}

TEST(TableText, SaysWhatItLeavesOutForWantOfWidth) {
  const std::string narrow = table_text(arms_table(made_judgement()), {.width = 60});

  EXPECT_THAT(narrow, HasSubstr("Left out for want of width"));
  EXPECT_THAT(narrow, Not(HasSubstr("Scatter:")));
  EXPECT_THAT(table_text(arms_table(made_judgement()), {.width = 120}), HasSubstr("Scatter:"));
}

TEST(TableText, SetsTheNumbersOfRowsBelowEachOther) {
  Judgement judgement = made_judgement();
  for (int i = 0; i < 6; ++i) judgement.arms.push_back(judgement.arms[0]);
  for (std::size_t i = 0; i < judgement.arms.size(); ++i) {
    judgement.arms[i].arm.blade = "trimming knife " + std::to_string(i);
  }

  const std::string text = table_text(arms_table(judgement), {.width = 120});

  EXPECT_THAT(text, HasSubstr("\n   2  trimming knife 1 "));
  EXPECT_THAT(text, HasSubstr("\n  12  trimming knife 11 "));
}

TEST(TableText, IsEmptyWithoutColumns) { EXPECT_THAT(table_text({}, {}), IsEmpty()); }

}  // namespace
}  // namespace keenfall::cli
