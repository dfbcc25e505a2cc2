#include "wear/edge_story.h"

#include "wear/apex_scenario.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

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
  const double twice = 2 * story.edge.readings.front().push_um;
  for (const EdgeReading& at : story.edge.readings) {
    const auto cuts = static_cast<double>(at.cuts);
    EXPECT_EQ(at.push_um < twice, cuts < life) << cuts;
  }
  EXPECT_LT(story.push.others.lo80_cuts.value(), story.push.others.hi80_cuts.value());
}

// Half keenness of A11 in clean stock is some 200 cuts (practice_long_test.cpp): not within 63.
// The 21 edges of a question, each by itself.
std::vector<SimulatedEdge> all_edges_of(const EdgeQuestion& question) {
  const ApexScenario scenario{.steels = {question.steel},
                              .work = work_in(known_media()[1]),
                              .edge = {.finish = fine_finish(), .length_mm = 5}};
  return simulate(simulation_of(scenario, 0, question.cuts),
                  {.runs = 21, .seed = question.seed},
                  base::one_thread())
      .value();
}

// Ten of the others are blunt sooner and ten later.
TEST(EdgeStories, TellOfTheEdgeInTheMiddle) {
  for (const std::uint64_t seed : {2U, 3U, 4U, 5U}) {
    EdgeQuestion question = question_in(1);
    question.seed = {seed};
    std::vector<double> lives;
    for (const SimulatedEdge& edge : all_edges_of(question)) {
      lives.push_back(cuts_to_level(edge, ApexReading::push).value());
    }

    const EdgeStory story = told(question);

    EXPECT_NEAR(
        *story.push.this_edge_cuts, lives.at(static_cast<std::size_t>(story.number) - 1), 1e-9);
    std::ranges::sort(lives);
    EXPECT_NEAR(*story.push.this_edge_cuts, lives[10], 1e-9);
  }
}

// None gets there within three cuts: it is the middle one by what is read at the end.
TEST(EdgeStories, TellOfTheMiddleEdgeAlsoWhereNoneIsBlunt) {
  EdgeQuestion question = question_in(1);
  question.cuts = 3;
  std::vector<double> last;
  for (const SimulatedEdge& edge : all_edges_of(question)) {
    last.push_back(edge.readings.back().push_um);
  }
  std::ranges::sort(last);

  const EdgeStory story = told(question);

  EXPECT_FALSE(story.push.this_edge_cuts);
  EXPECT_NEAR(story.edge.readings.back().push_um, last[10], 1e-9);
}

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
