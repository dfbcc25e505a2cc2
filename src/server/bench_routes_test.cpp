#include "server/asked_bench_test.h"

#include <atomic>
#include <string>
#include <thread>
#include <vector>

namespace keenfall::server {
namespace {

using testing::json;
using testing::kRun;
using testing::what_is_to_be_cut;

class BenchRoutes : public testing::AskedBench {};

TEST_F(BenchRoutes, SayWhyNothingIsCutBeforeThePlanIsSealed) {
  (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  trial_ =
      got("POST", "/trials", "Trial", {{"name", "Rope"}, {"asked", what_is_to_be_cut()}})["uid"];

  const json bench = got("GET", "/trials/" + trial_ + "/bench", "Bench");

  EXPECT_EQ(bench["why_not"],
            "The plan of Rope is not sealed: a run is cut to a plan that does not change any "
            "more.");
  EXPECT_TRUE(bench["lines"].empty());
  (void)refused(409, "POST", "/trials/" + trial_ + "/bench", {{"uid", kRun}, {"line", 0}});
}

TEST_F(BenchRoutes, ListThePlansRunsInTheOrderOfCutting) {
  with_sealed_trial();

  const json bench = got("GET", "/trials/" + trial_ + "/bench", "Bench");

  ASSERT_EQ(bench["lines"].size(), 4U);
  EXPECT_EQ(bench["lines"][0]["blade"], "A");
  EXPECT_EQ(bench["lines"][1]["blade"], "B");
  EXPECT_EQ(bench["lines"][0]["state"], "to_cut");
  EXPECT_EQ(bench["next"], 0);
  EXPECT_EQ(bench["left_in_block"], 2);
  EXPECT_FALSE(bench["cautions"].empty());
}

TEST_F(BenchRoutes, LeadARunFromItsStartIntoItsTrial) {
  with_sealed_trial();
  json run = begun();
  EXPECT_EQ(run["sheet"]["blade"], "A");
  EXPECT_EQ(run["standing"]["phase"], "preparing");
  EXPECT_EQ(run["standing"]["next_station"], "heel");
  EXPECT_EQ(got("GET", "/trials/" + trial_ + "/bench", "Bench")["lines"][0]["state"], "under_way");

  run = cut_through();

  EXPECT_EQ(run["standing"]["phase"], "closed");
  EXPECT_EQ(run["standing"]["readings"].size(), 6U);
  EXPECT_EQ(run["metres"], 0.075);
  EXPECT_TRUE(run["is_in_trial"]);
  const json trial = page();
  ASSERT_EQ(trial["recorded"]["runs"].size(), 1U);
  EXPECT_EQ(trial["recorded"]["runs"][0]["order"], 1);
  EXPECT_EQ(trial["recorded"]["runs"][0]["readings"].size(), 6U);
  const json bench = got("GET", "/trials/" + trial_ + "/bench", "Bench");
  EXPECT_EQ(bench["lines"][0]["state"], "cut");
  EXPECT_EQ(bench["next"], 1);
  EXPECT_EQ(bench["left_in_block"], 1);
}

TEST_F(BenchRoutes, HideReadingsUntilTheRunIsOver) {
  with_sealed_trial();
  (void)begun();
  const json run = read(0, 118.25);

  EXPECT_EQ(run["standing"]["readings_here"], 1);
  EXPECT_FALSE(run["standing"].contains("readings"));
  EXPECT_EQ(run["standing"]["to_take_back"]["words"], "the reading at 0 cuts");
}

TEST_F(BenchRoutes, SayOfAReadingOnlyWhetherToLookAgain) {
  with_sealed_trial();
  (void)begun();
  const auto look_again = [&](double cuts, double reading) {
    const json answer = got(
        "POST", "/bench/" + kRun + "/look", "LookAgain", {{"cuts", cuts}, {"reading", reading}});
    return answer["look_again"] == true;
  };

  EXPECT_FALSE(look_again(0, 104));
  EXPECT_TRUE(look_again(0, 1040));
  EXPECT_FALSE(look_again(3, 1040)) << "the run is not there";
  const json run = read(0, 104);
  EXPECT_FALSE(run["standing"].contains("usual"));
  EXPECT_EQ(run["entries"], 1);
  EXPECT_EQ(refused(400, "POST", "/bench/" + kRun + "/look", {{"cuts", 0}})["column"], "reading");
  (void)refused(404, "POST", "/bench/nowhere/look", {{"cuts", 0}, {"reading", 104}});
}

TEST_F(BenchRoutes, CountWhatArrivesTwiceOnce) {
  with_sealed_trial();
  (void)begun();
  (void)tapped({{"what", "start"}, {"subject", "matched"}});
  const json entries = {{"entries", {entry({{"what", "cuts"}, {"cuts", 1}})}}};

  (void)got("POST", "/bench/" + kRun, "BenchRun", entries);
  const json run = got("POST", "/bench/" + kRun, "BenchRun", entries);

  EXPECT_EQ(run["standing"]["cuts"], 1);
  EXPECT_EQ(run["entries"], 2);
}

TEST_F(BenchRoutes, TakeARunOutOfItsTrialWhereItsEndIsTakenBack) {
  with_sealed_trial();
  (void)begun();
  json run = cut_through();
  const std::string end = run["standing"]["to_take_back"]["id"];

  run = tapped({{"what", "taken back"}, {"subject", end}});

  EXPECT_EQ(run["standing"]["phase"], "at_the_stop");
  EXPECT_TRUE(page()["recorded"]["runs"].empty());

  run = tapped({{"what", "closed"}});
  EXPECT_TRUE(run["is_in_trial"]);
  EXPECT_EQ(page()["recorded"]["runs"].size(), 1U);
}

TEST_F(BenchRoutes, PutARunInAgainThatWasUndoneInTheJournal) {
  with_sealed_trial();
  (void)begun();
  (void)cut_through();
  (void)undone();
  EXPECT_FALSE(got("GET", "/bench/" + kRun, "BenchRun")["is_in_trial"]);

  const json run = got("POST", "/bench/" + kRun, "BenchRun", {{"entries", json::array()}});

  EXPECT_TRUE(run["is_in_trial"]);
  EXPECT_EQ(page()["recorded"]["runs"].size(), 1U);
}

TEST_F(BenchRoutes, PutARunInUnderAnotherNameWhereItsOwnWasTakenMeanwhile) {
  with_sealed_trial();
  (void)begun();
  const json table = {
      {"sources",
       {{{"name", "paper.csv"},
         {"text",
          "blade,bevel angle per side (deg),medium,method,cut length (mm),run,cuts,reading\n"
          "A,17,sisal rope,slice,25,1,0,100\nA,17,sisal rope,slice,25,1,1,120\n"}}}},
      {"trial", trial_}};
  (void)got("POST", "/tables/take", "TakenTable", table);

  const json run = cut_through();

  EXPECT_TRUE(run["is_in_trial"]) << run["why_not_in_trial"];
  const json runs = page()["recorded"]["runs"];
  ASSERT_EQ(runs.size(), 2U);
  EXPECT_EQ(runs[1]["name"], "1 again 2");
}

TEST_F(BenchRoutes, LeaveARunInItsTrialWhereTakingItsEndBackIsRefused) {
  with_sealed_trial();
  (void)begun();
  const std::string end = cut_through()["standing"]["to_take_back"]["id"];
  json twice = entry({{"what", "taken back"}, {"subject", end}});
  twice["id"] = "e1";

  (void)refused(409, "POST", "/bench/" + kRun, {{"entries", {twice}}});

  EXPECT_EQ(page()["recorded"]["runs"].size(), 1U);
  EXPECT_TRUE(got("GET", "/bench/" + kRun, "BenchRun")["is_in_trial"]);
}

TEST_F(BenchRoutes, TakeNothingBackFromBeforeTheEndThatStands) {
  with_sealed_trial();
  (void)begun();
  (void)cut_through();

  const json back = entry({{"what", "taken back"}, {"subject", "e1"}});
  EXPECT_EQ(refused(409, "POST", "/bench/" + kRun, {{"entries", {back}}})["sentence"],
            "The run is over.");
}

TEST_F(BenchRoutes, DoNotBringBackWhatWasUndoneWhereAnEndArrivesAgain) {
  with_sealed_trial();
  (void)begun();
  (void)cut_through();
  (void)undone();
  json end = {{"id", "e" + std::to_string(entries_)},
              {"at_ms", 1764000000000 + entries_},
              {"what", "closed"}};

  const json run = got("POST", "/bench/" + kRun, "BenchRun", {{"entries", {end}}});

  EXPECT_FALSE(run["is_in_trial"]);
  EXPECT_TRUE(page()["recorded"]["runs"].empty());
}

TEST_F(BenchRoutes, RefuseReadingsThatCannotBe) {
  with_sealed_trial();
  (void)begun();

  const json zero = entry({{"what", "reading"}, {"cuts", 0}, {"reading", 0}});
  EXPECT_EQ(refused(400, "POST", "/bench/" + kRun, {{"entries", {zero}}})["sentence"],
            "A thread push reading of 0 cannot be.");
}

TEST_F(BenchRoutes, BeginNoOtherRunUnderAnIdThatIsTaken) {
  with_sealed_trial();
  (void)begun();

  (void)refused(
      409, "POST", "/trials/" + trial_ + "/bench", {{"uid", kRun}, {"line", 1}, {"order", 2}});
  EXPECT_EQ(begun()["uid"], kRun);
}

// A run that was begun by mistake does not hold the plan, and is gone when it is sealed anew.
TEST_F(BenchRoutes, ForgetRunsThatNothingWasTappedForWhenAnotherPlanIsSealed) {
  with_sealed_trial();
  (void)begun();
  (void)undone();
  (void)got("POST", "/trials/" + trial_ + "/seal", "Trial");

  const json bench = got("GET", "/trials/" + trial_ + "/bench", "Bench");

  EXPECT_EQ(bench["lines"][0]["state"], "to_cut");
  (void)refused(404, "GET", "/bench/" + kRun, nullptr);
}

TEST_F(BenchRoutes, CutAVoidedRunAgainUnderANameOfItsOwn) {
  with_sealed_trial();
  (void)begun();
  (void)tapped({{"what", "voided"}, {"words", "rope slipped"}});
  EXPECT_EQ(page()["recorded"]["runs"].size(), 1U);
  const std::string again = "f" + kRun.substr(1);

  json run = begun(0, again);
  EXPECT_EQ(run["sheet"]["name"], "1 again 2");
  EXPECT_EQ(run["sheet"]["order"], 1);
  run = cut_through(again);

  EXPECT_TRUE(run["is_in_trial"]) << run["why_not_in_trial"];
  EXPECT_EQ(page()["recorded"]["runs"].size(), 2U);
}

TEST_F(BenchRoutes, RefuseWhatCannotBeAnEntryAndSayWhichField) {
  with_sealed_trial();
  (void)begun();
  const auto problem = [&](const json& fields) {
    return refused(400, "POST", "/bench/" + kRun, {{"entries", {entry(fields)}}});
  };

  EXPECT_EQ(problem({{"what", "cuts"}, {"cuts", 0}})["column"], "entries[0].cuts");
  EXPECT_EQ(problem({{"what", "cuts"}})["column"], "entries[0].what");
  EXPECT_EQ(problem({{"what", "dance"}})["column"], "entries[0].what");
  EXPECT_EQ(problem({{"what", "voided"}})["column"], "entries[0].words");
  EXPECT_EQ(problem({{"what", "reading"}, {"cuts", 1}})["column"], "entries[0].what");
  EXPECT_EQ(refused(404, "GET", "/bench/nowhere", nullptr)["kind"], "unknown_name");
  EXPECT_EQ(got("GET", "/bench/" + kRun, "BenchRun")["entries"], 0);
}

TEST_F(BenchRoutes, RefuseAndNameFieldsThatDoNotBelongToWhatWasDone) {
  with_sealed_trial();
  (void)begun();
  const auto problem = [&](const json& fields) {
    return refused(400, "POST", "/bench/" + kRun, {{"entries", {entry(fields)}}});
  };

  const json paused = problem({{"what", "paused"}, {"cuts", 3}});
  EXPECT_EQ(paused["column"], "entries[0].cuts");
  EXPECT_EQ(paused["accepted"], "nothing: it does not belong to an entry of “paused”");
  EXPECT_EQ(problem({{"what", "cuts"}, {"cuts", 1}, {"words", "wet"}})["column"],
            "entries[0].words");
  EXPECT_EQ(problem({{"what", "noted"}, {"words", "wet"}, {"piece_changed", false}})["column"],
            "entries[0].piece_changed");
  EXPECT_EQ(got("GET", "/bench/" + kRun, "BenchRun")["entries"], 0);
}

TEST_F(BenchRoutes, FindNoRunOfATrialThatWasUndone) {
  with_sealed_trial();
  (void)begun();
  (void)undone();
  (void)undone();
  const std::string sentence =
      "The trial of this run is not in the notebook any more: it was undone.";

  EXPECT_EQ(refused(404, "GET", "/bench/" + kRun, nullptr)["sentence"], sentence);
  EXPECT_EQ(refused(404,
                    "POST",
                    "/bench/" + kRun,
                    {{"entries", {entry({{"what", "cuts"}, {"cuts", 1}})}}})["sentence"],
            sentence);
}

TEST_F(BenchRoutes, HoldThePlanSealedOnceSomethingWasTapped) {
  with_sealed_trial();
  const std::int64_t sealing = got("GET", "/home", "Home")["undoes"]["entry"];
  (void)begun();
  (void)tapped({{"what", "noted"}, {"words", "wet rope"}});

  const json problem =
      refused(409, "POST", "/journal/" + std::to_string(sealing) + "/undo", json::object());

  EXPECT_NE(std::string(problem["sentence"]).find("stays sealed"), std::string::npos);
}

TEST_F(BenchRoutes, RefuseAnotherLineThanWasMeant) {
  with_sealed_trial();

  (void)refused(
      409, "POST", "/trials/" + trial_ + "/bench", {{"uid", kRun}, {"line", 0}, {"order", 3}});
  (void)refused(400, "POST", "/trials/" + trial_ + "/bench", {{"uid", "short"}, {"line", 0}});
}

// Eight devices at once, each tap sent twice: none lost, none doubled.
TEST_F(BenchRoutes, KeepTheTapsOfManyDevicesOnce) {
  with_sealed_trial();
  (void)begun();
  constexpr int kDevices = 8;
  constexpr int kTaps = 15;
  std::atomic<int> refused_taps{0};
  {
    std::vector<std::jthread> devices;
    for (int device = 0; device < kDevices; ++device) {
      devices.emplace_back([&, device] {
        for (int tap = 0; tap < kTaps; ++tap) {
          const json body = {{"entries",
                              {{{"id", std::to_string(device) + "-" + std::to_string(tap)},
                                {"at_ms", 1764000000000},
                                {"what", "cuts"},
                                {"cuts", 1}}}}};
          for (int twice = 0; twice < 2; ++twice) {
            if (asked("POST", "/bench/" + kRun, body.dump()).status != 200) ++refused_taps;
          }
        }
      });
    }
  }

  EXPECT_EQ(refused_taps, 0);
  EXPECT_EQ(got("GET", "/bench/" + kRun, "BenchRun")["standing"]["cuts"], kDevices * kTaps);
}

}  // namespace
}  // namespace keenfall::server
