// What was measured before, as a page that plans asks for it.
#include "server/asked_app_test.h"
#include "workbench/measured_before.h"
#include "workbench/notebook_changes.h"

#include <gmock/gmock.h>

#include <chrono>
#include <cmath>
#include <fstream>
#include <utility>

namespace keenfall::server {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::json;
using ::testing::StartsWith;
using ::testing::UnorderedElementsAre;

struct CutTrial {
  std::string name;
  std::vector<std::string> blades = {"A"};
  int runs = 3;  // of each blade
  std::string medium = "sisal";
  std::string note = {};
  int checkpoints = 6;
};

class MeasuredRoute : public testing::AskedApp {
 protected:
  MeasuredRoute() { (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}}); }

  void take(const std::string& trial, const std::string& table) {
    const auto path = folder_ / "rows.csv";
    std::ofstream(path) << table;
    const auto taken = workbench::take_into(
        {.notebook = *open_.notebook(), .tables = {path.string()}, .trial = trial}, open_.hand());
    ASSERT_TRUE(taken) << taken.error().front().sentence;
  }
  // Half keenness after about 30 cuts; runs differ by a tenth each.
  void cut(const CutTrial& trial) {
    std::string table = "blade,medium,run,cuts,reading,note\n";
    for (const std::string& blade : trial.blades) {
      for (int run = 1; run <= trial.runs; ++run) {
        const double half = 30 * (1 + 0.1 * (run % 3));
        for (int at = 0; at < trial.checkpoints; ++at) {
          const double cuts = std::exp2(at + 1) - 2;
          table += blade + "," + trial.medium + "," + std::to_string(run) + "," +
                   std::to_string(cuts) + "," +
                   std::to_string(100 * (1 + std::pow(cuts / half, 0.7))) + "," + trial.note + "\n";
        }
      }
    }
    take(trial.name, table);
  }
  void plan_own_scatter_in(const std::string& trial) {
    const json asked =
        got("POST", "/planning/own-scatter", "Asked", {{"blade", "A"}, {"medium", "sisal"}});
    (void)got("POST", "/trials", "Trial", {{"name", trial}, {"asked", asked}});
  }
  json measured() { return got("GET", "/planning/measured", "Measured"); }
  static std::vector<std::string> trials_in(const json& measured) {
    std::vector<std::string> trials;
    for (const json& arm : measured["arms"]) {
      trials.push_back(arm["trial"].get<std::string>() + " " + arm["words"].get<std::string>());
    }
    return trials;
  }
};

TEST_F(MeasuredRoute, HasWhatAPlanMayAssume) {
  plan_own_scatter_in("My hand");
  cut({.name = "My hand"});

  const json found = measured();

  ASSERT_EQ(found["arms"].size(), 1U);
  EXPECT_FALSE(found.contains("left_out"));
  const json& arm = found["arms"][0];
  EXPECT_EQ(arm["trial_uid"], got("GET", "/home", "Home")["trials"][0]["uid"]);
  EXPECT_EQ(arm["blade"], "A");
  EXPECT_EQ(arm["medium"], "sisal");
  EXPECT_EQ(arm["kind"], "thread_push");
  EXPECT_EQ(arm["counted"], "cuts");
  EXPECT_EQ(arm["runs"], 3);
  // Three runs that truly last 30, 33 and 36 cuts.
  EXPECT_NEAR(arm["half_keenness_cuts"], 33, 4);
  const json& scatter = arm["run_log_sd"];
  EXPECT_LT(scatter["lo95"], scatter["median"]);
  EXPECT_LT(scatter["median"], scatter["hi95"]);
  EXPECT_GT(scatter["hi95"], 0.09);
  EXPECT_NEAR(arm["to_be_assumed"]["run_log_sd"], scatter["median"], 0.005);
  EXPECT_NEAR(arm["to_be_assumed"]["half_keenness_cuts"], arm["half_keenness_cuts"], 0.5);
  EXPECT_THAT(arm["sentence"].get<std::string>(),
              StartsWith("Your runs of A scatter by " + arm["percent_words"].get<std::string>()));
}

// The same numbers that the page of the trial tells.
TEST_F(MeasuredRoute, SaysWhatJudgingSays) {
  plan_own_scatter_in("My hand");
  cut({.name = "My hand"});
  const std::string uid = got("GET", "/home", "Home")["trials"][0]["uid"];

  const json judged =
      got("POST", "/trials/" + uid + "/judgements", "Judged", {{"engine", "quick"}});

  EXPECT_EQ(measured()["arms"][0]["sentence"], judged["own_scatter_words"]);
}

TEST_F(MeasuredRoute, HasTheNewestFirstAndOnesOwnRepeatabilityBeforeOthers) {
  plan_own_scatter_in("My hand");
  cut({.name = "My hand"});
  cut({.name = "Older", .blades = {"B", "C"}});
  cut({.name = "Newer", .medium = "felt"});

  EXPECT_THAT(trials_in(measured()), ElementsAre("My hand A", "Newer A", "Older B", "Older C"));
}

TEST_F(MeasuredRoute, TellsEdgesOfABladeApartInTheUnitsAskedFor) {
  std::string table = "blade,thickness_behind_edge_mm,medium,run,cuts,reading\n";
  for (const char* behind : {"0.38", "0.5"}) {
    for (const char* run : {"1", "2"}) {
      for (const auto& [cuts, reading] : {std::pair{"0", "100"}, {"10", "140"}, {"40", "210"}}) {
        table += std::string("A,") + behind + ",sisal," + run + "," + cuts + "," + reading + "\n";
      }
    }
  }
  take("Thick and thin", table);
  headers_ = {{.name = "x-keenfall-told-in", .text = "in"}};

  EXPECT_THAT(trials_in(measured()),
              UnorderedElementsAre("Thick and thin A (0.015 in behind the edge)",
                                   "Thick and thin A (0.0197 in behind the edge)"));
}

TEST_F(MeasuredRoute, LeavesOutWhatTellsNoScatter) {
  cut({.name = "One run", .runs = 1});
  cut({.name = "Only a start", .checkpoints = 1});
  take("Only tested", "blade,medium,run,lasted,failed_by\nA,sisal,1,10,20\nA,sisal,2,20,40\n");
  plan_own_scatter_in("Not cut");
  cut({.name = "Simulated", .note = std::string(trials::kSimulatedNote)});

  const json found = measured();

  EXPECT_THAT(found["arms"], IsEmpty()) << found;
  EXPECT_FALSE(found.contains("left_out"));
}

TEST_F(MeasuredRoute, IsEmptyWhereNothingWasMeasured) {
  EXPECT_THAT(measured()["arms"], IsEmpty());
}

TEST_F(MeasuredRoute, SaysThatATrialOfManyRunsWasNotLookedAt) {
  cut({.name = "Many", .blades = {"A", "B"}, .runs = 31, .checkpoints = 3});
  cut({.name = "Few"});

  const json found = measured();

  EXPECT_THAT(trials_in(found), ElementsAre("Few A"));
  EXPECT_EQ(found["left_out"], "1 trial of more than 60 runs was not looked at.");
}

TEST_F(MeasuredRoute, TakesTheNewestOfManyTrialsAndIsQuickTheSecondTime) {
  plan_own_scatter_in("My hand");
  cut({.name = "My hand"});
  for (int trial = 1; trial <= 5; ++trial) {
    cut({.name = "T" + std::to_string(trial), .blades = {"A", "B"}, .runs = 29, .checkpoints = 3});
  }

  const json found = measured();
  const auto begun = std::chrono::steady_clock::now();
  const json again = measured();
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begun;

  EXPECT_THAT(
      trials_in(found),
      ElementsAre("My hand A", "T5 A", "T5 B", "T4 A", "T4 B", "T3 A", "T3 B", "T2 A", "T2 B"));
  EXPECT_EQ(found["left_out"], "1 other trial was not looked at.");
  EXPECT_EQ(again, found);
  EXPECT_LT(took.count(), 1);
}

TEST(MeasuredRouteWithoutANotebook, HasNothing) {
  Routes routes;
  Works works;
  workbench::OpenApp open({.program_version = "0.1.0",
                           .folder = ".",
                           .notebook = std::nullopt,
                           .who = "R.",
                           .machine_words = "bench-2",
                           .utc_now = [] { return std::string("2026-11-26T12:00:00Z"); }});
  add_app_routes({.routes = routes, .works = works, .open = open, .ask_to_stop = [] {}});

  EXPECT_EQ(routes.answer({.method = "GET", .path = "/api/v1/planning/measured", .body = {}}).body,
            R"({"arms":[]})");
}

}  // namespace
}  // namespace keenfall::server
