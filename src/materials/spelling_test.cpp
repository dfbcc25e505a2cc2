#include "materials/spelling.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>

namespace keenfall::materials {
namespace {

// The example of the usual textbooks: kitten to sitting takes three edits.
TEST(Spelling, CountsTheEditsBetweenTwoWords) {
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3U);
  EXPECT_EQ(edit_distance("", "abc"), 3U);
  EXPECT_EQ(edit_distance("abc", "abc"), 0U);
}

TEST(Spelling, FoldsCaseBlanksAndMarksAway) {
  EXPECT_EQ(folded(" EN 1.2379 "), "en12379");
  EXPECT_EQ(folded("deg-per_side"), "degperside");
  EXPECT_EQ(folded(""), "");
}

TEST(Spelling, TrimsNoBreakSpacesToo) { EXPECT_EQ(trimmed("\u00a0a b\u202f\n"), "a b"); }

TEST(Spelling, OffersTheNearestNamesFirstAndNoStrangers) {
  const std::array<std::string_view, 4> known = {"kgf", "gf", "lbf", "deg-inclusive"};

  EXPECT_THAT(nearest_names("kgff", known), testing::ElementsAre("kgf", "gf"));
  EXPECT_THAT(nearest_names("furlongs", known), testing::IsEmpty());
  EXPECT_THAT(nearest_names("", known), testing::IsEmpty());
}

TEST(Spelling, AsksWhetherANearNameWasMeant) {
  const std::array<std::string_view, 4> known = {"kgf", "gf", "lbf", "deg-inclusive"};

  EXPECT_EQ(did_you_mean("kgff", known), "did you mean kgf or gf");
  EXPECT_EQ(did_you_mean("furlongs", known), "");
}

}  // namespace
}  // namespace keenfall::materials
