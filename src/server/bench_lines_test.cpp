// The lines of the bench: which runs of the plan are open, and why those that were begun are.
#include "server/asked_bench_test.h"

#include <string>

namespace keenfall::server {
namespace {

using testing::json;
using testing::kRun;

class BenchLines : public testing::AskedBench {
 protected:
  json bench() { return got("GET", "/trials/" + trial_ + "/bench", "Bench"); }
};

TEST_F(BenchLines, AreOpenAgainWhereWhatPutTheRunIntoTheTrialWasUndone) {
  with_sealed_trial();
  (void)begun();
  (void)cut_through();
  EXPECT_EQ(bench()["lines"][0]["state"], "cut");
  EXPECT_EQ(page()["to_cut"].size(), 3U);

  (void)undone();

  EXPECT_EQ(bench()["lines"][0]["state"], "taken_out");
  EXPECT_EQ(bench()["lines"][0]["run"], kRun);
  EXPECT_EQ(bench()["next"], 0);
  EXPECT_EQ(bench()["left_in_block"], 2);
  EXPECT_EQ(page()["to_cut"].size(), 4U);
}

TEST_F(BenchLines, AreCutOncePutInAgain) {
  with_sealed_trial();
  (void)begun();
  (void)cut_through();
  (void)undone();

  (void)got("POST", "/bench/" + kRun, "BenchRun", {{"entries", json::array()}});

  EXPECT_EQ(bench()["lines"][0]["state"], "cut");
}

TEST_F(BenchLines, AreCutAnewInTheirPlaceAfterAnUndoing) {
  with_sealed_trial();
  (void)begun();
  (void)cut_through();
  (void)undone();
  const std::string again = "f" + kRun.substr(1);

  EXPECT_EQ(begun(0, again)["sheet"]["order"], 1);
  EXPECT_TRUE(cut_through(again)["is_in_trial"]);

  EXPECT_EQ(bench()["lines"][0]["state"], "cut");
  EXPECT_EQ(bench()["lines"][0]["run"], again);
}

TEST_F(BenchLines, AreUnderWayAgainWhereAnEndIsTakenBackAfterAnotherRunWasClosed) {
  with_sealed_trial();
  (void)begun();
  const std::string end = cut_through()["standing"]["to_take_back"]["id"];
  const std::string other = "f" + kRun.substr(1);
  (void)begun(1, other);
  (void)cut_through(other);

  json run = tapped({{"what", "taken back"}, {"subject", end}});

  EXPECT_EQ(run["standing"]["phase"], "at_the_stop");
  EXPECT_EQ(bench()["lines"][0]["state"], "under_way");
  EXPECT_EQ(bench()["lines"][1]["state"], "cut");
  ASSERT_EQ(page()["recorded"]["runs"].size(), 1U);
  EXPECT_EQ(page()["recorded"]["runs"][0]["order"], 2);

  run = tapped({{"what", "closed"}});
  EXPECT_TRUE(run["is_in_trial"]) << run["why_not_in_trial"];
  EXPECT_EQ(page()["recorded"]["runs"].size(), 2U);
  EXPECT_EQ(bench()["lines"][0]["state"], "cut");

  // All of it can be undone, from the end on.
  (void)undone();
  EXPECT_EQ(page()["recorded"]["runs"].size(), 1U);
  (void)undone();
  ASSERT_EQ(page()["recorded"]["runs"].size(), 2U);
  EXPECT_EQ(page()["recorded"]["runs"][0]["order"], 1);
  (void)undone();
  (void)undone();
  EXPECT_TRUE(page()["recorded"]["runs"].empty());
}

TEST_F(BenchLines, StayCutWhereTheRunWasCorrectedSinceAndSaySo) {
  with_sealed_trial();
  (void)begun();
  const std::string end = cut_through()["standing"]["to_take_back"]["id"];
  (void)got("POST",
            "/trials/" + trial_ + "/strikes",
            "Changed",
            {{"run", 0}, {"reading", 0}, {"reason", "slack"}});

  const json back = entry({{"what", "taken back"}, {"subject", end}});
  const json problem = refused(409, "POST", "/bench/" + kRun, {{"entries", {back}}});

  EXPECT_NE(std::string(problem["sentence"]).find("later entries changed it: "), std::string::npos)
      << problem;
  EXPECT_EQ(problem["accepted"], "undoing those first, in the journal");
  EXPECT_EQ(bench()["lines"][0]["state"], "cut");
}

TEST_F(BenchLines, TakeAndTellReadingsInTheUnitThatWasChosen) {
  with_sealed_trial();
  headers_.push_back({.name = "x-keenfall-told-in", .text = "N"});
  json run = begun();
  EXPECT_EQ(run["sheet"]["unit"], "N");

  run = tapped({{"what", "reading"}, {"cuts", 0}, {"reading", 1.02}, {"unit", "N"}});
  (void)tapped({{"what", "reading"}, {"cuts", 0}, {"reading", 104}});
  EXPECT_EQ(run["standing"]["start"]["stations"][0]["median"], 1.02);
  const json look = {{"cuts", 0}, {"reading", 104}, {"unit", "N"}};
  EXPECT_EQ(got("POST", "/bench/" + kRun + "/look", "LookAgain", look)["look_again"], true);
  const json pears = entry({{"what", "reading"}, {"cuts", 0}, {"reading", 1}, {"unit", "mm"}});
  EXPECT_EQ(refused(400, "POST", "/bench/" + kRun, {{"entries", {pears}}})["column"], "unit");
  run = tapped({{"what", "closed"}, {"words", "no light"}});

  EXPECT_EQ(run["standing"]["readings"][0]["reading"], 1.02);
  EXPECT_EQ(run["standing"]["readings"][1]["reading"], 1.02);
  headers_.clear();
  const json as_recorded = page()["recorded"];
  ASSERT_EQ(as_recorded["runs"][0]["readings"].size(), 2U);
  ASSERT_EQ(as_recorded["series"].size(), 2U);
  EXPECT_EQ(as_recorded["series"][0]["unit"], "N");
  EXPECT_EQ(as_recorded["runs"][0]["readings"][0]["series"], 0);
  EXPECT_EQ(as_recorded["runs"][0]["readings"][0]["reading"], 1.02);
  EXPECT_EQ(as_recorded["runs"][0]["readings"][1]["series"], 1);
}

TEST_F(BenchLines, StayOpenWhereARunWasClosedWithoutAReading) {
  with_sealed_trial();
  (void)begun();
  (void)tapped({{"what", "cuts"}, {"cuts", 1}});

  const json run = tapped({{"what", "closed"}, {"words", "no light"}});

  EXPECT_EQ(run["standing"]["phase"], "closed");
  EXPECT_EQ(run["standing"]["readings_taken"], 0);
  EXPECT_FALSE(run["is_in_trial"]);
  EXPECT_EQ(run["why_not_in_trial"], "nothing was read in it. It stays to be cut.");
  EXPECT_EQ(bench()["lines"][0]["state"], "nothing_read");
  EXPECT_EQ(bench()["next"], 0);
  EXPECT_TRUE(page()["recorded"]["runs"].empty());
  EXPECT_EQ(page()["to_cut"].size(), 4U);
}

}  // namespace
}  // namespace keenfall::server
