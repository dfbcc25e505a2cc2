#include "wire/work_json.h"

#include "wire/schema_faults_test.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <limits>
#include <stdexcept>

namespace keenfall::wire {
namespace {

using nlohmann::json;

TEST(WorkAsJson, SaysWhatItDoesAndHowLongItStillTakes) {
  const WorkTold work{.id = "w1",
                      .state = WorkState::running,
                      .words = "fitting the curves",
                      .fraction = 0.25,
                      .seconds_left = 30};

  const json document = json::parse(work_to_json(work));

  EXPECT_EQ(testing::faults_against_api(document, "Work"), "");
  EXPECT_EQ(document, json::parse(R"({"id": "w1", "state": "running", "words": "fitting the curves",
                            "fraction": 0.25, "seconds_left": 30})"));
}

TEST(WorkAsJson, SaysWhyItFailed) {
  const WorkTold work{.id = "w1",
                      .state = WorkState::failed,
                      .problems = {{.kind = base::ProblemKind::unsuitable_data,
                                    .sentence = "There is nothing to judge."}},
                      .failure = "The disk is full."};

  const json document = json::parse(work_to_json(work));

  EXPECT_EQ(testing::faults_against_api(document, "Work"), "");
  EXPECT_EQ(document["problems"][0]["sentence"], "There is nothing to judge.");
  EXPECT_EQ(document["problems"][1]["kind"], "failed");
  EXPECT_EQ(document["problems"][1]["sentence"], "The disk is full.");
}

TEST(WorkAsJson, NamesEveryStateAsTheDescriptionDoes) {
  using enum WorkState;
  for (const auto state : {waiting, running, done, failed, cancelled}) {
    const json document = json::parse(begun_work_to_json({.id = "w1", .state = state}));
    EXPECT_EQ(testing::faults_against_api(document, "Started"), "");
  }
}

TEST(WorkAsJson, HasNoFractionThatIsNoNumber) {
  EXPECT_THROW((void)work_to_json({.fraction = std::numeric_limits<double>::quiet_NaN()}),
               std::logic_error);
}

}  // namespace
}  // namespace keenfall::wire
