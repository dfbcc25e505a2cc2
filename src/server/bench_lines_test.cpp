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
