#include "wear/edge_story.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::wear {
namespace {

using ::testing::HasSubstr;

EdgeQuestion question_in(std::size_t medium) {
  return {.steel = materials::find_microstructure("AISI A11").value(),
          .work = work_in(known_media()[medium]),
          .edge = {.finish_name = "fine", .finish = fine_finish()},
          .cuts = 63,
          .edge_length_mm = 5,
          .other_edges = 20,
          .seed = {2}};
}

EdgeStory told(const EdgeQuestion& question) {
  return edge_story(question, base::one_thread()).value();
}

TEST(EdgeStories, ReadAtDoublingCheckpointsAndKeepTheSections) {
  const EdgeStory story = told(question_in(1));

  std::vector<long> cuts;
  for (const EdgeReading& at : story.edge.readings) {
    cuts.push_back(at.cuts);
    EXPECT_TRUE(at.section.has_value());
  }
  EXPECT_EQ(cuts, (std::vector<long>{0, 1, 3, 7, 15, 31, 63}));
}

// Read at every cut or at a few, it is one edge.
TEST(EdgeStories, TellOfTheSameEdgeThatTheirLifeIsOf) {
  const EdgeStory story = told(question_in(1));

  const double life = story.push.this_edge_cuts.value();
  const double coarse = cuts_to_level(story.edge, ApexReading::push).value();
  EXPECT_NEAR(coarse / life, 1, 0.15);
  EXPECT_LT(story.push.others.lo80_cuts.value(), story.push.others.hi80_cuts.value());
}

// Half keenness of A11 in clean stock is some 200 cuts (practice_long_test.cpp): not within 63.
TEST(EdgeStories, NameNoLifeThatWasNotReached) {
  const EdgeStory story = told(question_in(0));

  EXPECT_FALSE(story.push.this_edge_cuts);
  EXPECT_FALSE(story.push.others.median_cuts);
  EXPECT_FALSE(story.push.others.lo80_cuts);
}

TEST(EdgeStories, AreRefusedAsTrialsAre) {
  EdgeQuestion none = question_in(1);
  none.cuts = 0;

  const auto story = edge_story(none, base::one_thread());

  ASSERT_FALSE(story);
  EXPECT_THAT(in_words(story.error()), HasSubstr("the longest run in cuts is out of its range"));
}

}  // namespace
}  // namespace keenfall::wear
