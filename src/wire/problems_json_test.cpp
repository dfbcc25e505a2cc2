#include "wire/problems_json.h"

#include "wire/schema_faults_test.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace keenfall::wire {
namespace {

using nlohmann::json;

const base::Problem kOfACell{.kind = base::ProblemKind::bad_value,
                             .sentence = "The reading is no number.",
                             .place = {.file = "spring.csv",
                                       .line = 7,
                                       .column = "reading",
                                       .found = "10x",
                                       .cell = "cell C7"},
                             .accepted = "a number"};

TEST(ProblemsAsJson, HoldTheSentenceThePlaceAndWhatWouldDo) {
  const json document = json::parse(problems_to_json(std::vector{kOfACell}));

  EXPECT_EQ(testing::faults_against_api(document, "Problems"), "");
  EXPECT_EQ(document["problems"][0],
            json::parse(R"({"sentence": "The reading is no number.", "kind": "bad_value",
                            "accepted": "a number", "file": "spring.csv", "line": 7,
                            "column": "reading", "found": "10x", "cell": "cell C7"})"));
}

TEST(ProblemsAsJson, LeaveOutWhatIsNotKnown) {
  const base::Problem bare{.kind = base::ProblemKind::missing, .sentence = "There is no table."};

  const json document = json::parse(problems_to_json(std::vector{bare}));

  EXPECT_EQ(document["problems"][0].size(), 2U);
}

TEST(ProblemsAsJson, NameEveryKindAsTheDescriptionDoes) {
  using enum base::ProblemKind;
  for (const auto kind : {bad_value,
                          missing,
                          conflicting,
                          unknown_name,
                          unreadable,
                          too_large,
                          unsuitable_data,
                          interrupted}) {
    const base::Problem problem{.kind = kind, .sentence = "No."};
    const json document = json::parse(problems_to_json(std::vector{problem}));
    EXPECT_EQ(testing::faults_against_api(document, "Problems"), "");
  }
}

TEST(ProblemsAsJson, ReplaceBytesThatAreNoText) {
  const base::Problem problem{.sentence = "No.",
                              .place = {.found = "a\xFF"
                                                 "b"}};

  const json document = json::parse(problems_to_json(std::vector{problem}));

  EXPECT_EQ(document["problems"][0]["found"], "a\uFFFDb");
}

TEST(ProblemsAsJson, AreWhatARefusedRequestIsAnsweredToo) {
  const json document = json::parse(refusal_to_json("not_allowed", "There is no key."));

  EXPECT_EQ(testing::faults_against_api(document, "Problems"), "");
  EXPECT_EQ(document["problems"][0]["sentence"], "There is no key.");
}

}  // namespace
}  // namespace keenfall::wire
