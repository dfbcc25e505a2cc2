// What the program makes of tables with doubtful readings, edge lives and voided runs.
#include "tables_on_disk.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>
#include <string>

namespace keenfall::journeys {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;

// `readings_of(2)` with a question mark behind the readings of a blade from some cuts on.
std::string with_doubts(const std::string& blade, int from_cuts, int to_cuts) {
  std::istringstream lines(readings_of(2));
  std::string table;
  for (std::string line; std::getline(lines, line);) {
    table += line;
    if (line.starts_with(blade + ",rope,")) {
      const int cuts = std::stoi(line.substr(line.find(',', line.find("rope,") + 5) + 1));
      if (cuts >= from_cuts && cuts <= to_cuts) table += '?';
    }
    table += '\n';
  }
  return table;
}

TEST(ADoubtfulReading, IsSaidToChangeNothingWhereItDoesNot) {
  const std::string table = a_table("doubt.csv", with_doubts("A", 5, 5));

  EXPECT_THAT(keenfall({"judge", table, "--worth-it=1.1"}).out, HasSubstr("Left out, no "));
  const auto document =
      nlohmann::json::parse(keenfall({"judge", table, "--worth-it=1.1", "--json"}).out);
  EXPECT_EQ(document["runs"][0]["readings_doubtful"], 1);
  EXPECT_EQ(document["comparisons"][0]["without_doubtful_readings"]["agrees"], true);
}

// All that shows how far C blunts is in doubt: what is left, at 0 and 2 cuts, shows that it lasts
// longer, and no more that it is worth having.
TEST(DoubtfulReadings, AreNamedWithTheVerdictTheyChange) {
  const std::string table = a_table("doubts.csv", with_doubts("C", 5, 40));

  const auto document = nlohmann::json::parse(keenfall({"judge", table, "--json"}).out);
  const auto& pair = document["comparisons"][0];

  EXPECT_THAT(keenfall({"judge", table}).out,
              AllOf(HasSubstr("12 readings are marked as doubtful"), HasSubstr("Left out: ")));
  EXPECT_EQ(pair["quick"]["verdict"], "longer, and worth having");
  EXPECT_EQ(pair["without_doubtful_readings"]["verdict"], "longer");
  EXPECT_EQ(pair["without_doubtful_readings"]["agrees"], false);
}

TEST(TheEdgeLives, AreJudgedWhereTheyAreAskedForByName) {
  const std::string table = a_table("lives.csv",
                                    "blade,medium,run,cuts,reading,unit,lasted,failed_by\n"
                                    "A,sisal,1,0,100,gf,10,20\n"
                                    "A,sisal,1,10,150,gf,,\n"
                                    "A,sisal,2,0,100,gf,20,30\n"
                                    "A,sisal,2,10,150,gf,,\n"
                                    "A,sisal,3,0,100,gf,5,10\n"
                                    "A,sisal,3,10,150,gf,,\n"
                                    "B,sisal,1,0,100,gf,20,30\n"
                                    "B,sisal,1,10,150,gf,,\n"
                                    "B,sisal,2,0,100,gf,40,50\n"
                                    "B,sisal,2,10,150,gf,,\n"
                                    "B,sisal,3,0,100,gf,10,20\n"
                                    "B,sisal,3,10,150,gf,,\n");

  const Said said = keenfall({"judge", table, "--kind=edge_life", "--json"});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  const auto judgement = nlohmann::json::parse(said.out);
  EXPECT_EQ(judgement["kind"]["name"], "edge_life");
  EXPECT_EQ(judgement["runs"][0]["failed_by_cuts"], 20);
}

// Counted in examples/edge-lives: of the five edges of C one was given up before it failed.
TEST(TheEdgeLives, AreJudgedByTheirTest) {
  const Said said =
      keenfall({"judge", KEENFALL_SOURCE_DIR "/examples/edge-lives/edge_lives.csv", "--json"});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  const auto judgement = nlohmann::json::parse(said.out);
  EXPECT_EQ(judgement["test"]["words"], "slices newsprint cleanly");
  EXPECT_EQ(judgement["arms"][2]["test_cuts"]["runs_that_reached"], 4);
  EXPECT_EQ(judgement["comparisons"].size(), 3U);
}

// By hand, from the table's medians: A's readings pass 2.5 x 103 gf at about 14 cuts, half of C's
// edges fail at about 38; 38 / 14 = 2.7.
TEST(TheEdgesReadAndTested, AreComparedAtTheLevelThatTheTableStates) {
  const Said said = run(
      {.program = KEENFALL_PROGRAM,
       .words = {"judge", KEENFALL_SOURCE_DIR "/examples/edge-lives/read_and_tested.csv", "--json"},
       .environment = {{"LC_ALL", "C.UTF-8"}}});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  const auto document = nlohmann::json::parse(said.out);
  ASSERT_EQ(document["also_judged"].size(), 2U);
  const auto& between = document["also_judged"][1];
  EXPECT_EQ(between["kind"]["name"], "read_and_tested");
  ASSERT_EQ(between["comparisons"].size(), 1U);
  EXPECT_EQ(between["comparisons"][0]["a"]["blade"], "C");
  EXPECT_EQ(between["comparisons"][0]["at"]["level"], 2.5);
  EXPECT_NEAR(between["comparisons"][0]["ratio"]["median"].get<double>(), 2.7, 0.3);
}

TEST(ABlade, OfWhichEveryRunIsVoidedIsNamedInTheAnswer) {
  const std::string table = a_table("voided.csv",
                                    "blade,medium,run,cuts,reading,voided\n"
                                    "A,felt,1,0,100,\nA,felt,1,10,150,\nA,felt,1,40,260,\n"
                                    "B,felt,1,0,101,burr left\nB,felt,1,10,180,\n");
  const Said said = keenfall({"judge", table});

  EXPECT_THAT(said.exit_code, ::testing::AnyOf(0, 1)) << said.err;
  EXPECT_THAT(said.out, HasSubstr("Nothing is said of B on felt"));
}

}  // namespace
}  // namespace keenfall::journeys
