// Trials made by the simulator, judged by the program like any other.
#include "tables_on_disk.h"

#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <string>

namespace keenfall::journeys {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

std::string nothing_at(const std::string& name) {
  std::string path = scratch(name).string();
  std::filesystem::remove(path);
  return path;
}

// Half keenness of 75Ni8 and AISI A11 in clean stock differs four times over: three runs see that.
TEST(ASimulatedTrial, IsJudgedWithoutComplaintAndSettledTheRightWay) {
  const std::string table = nothing_at("made.csv");

  const Said made = keenfall({"simulate",
                              "--steel=AISI A11",
                              "--steel=75Ni8",
                              "--medium=new sisal matting",
                              "--runs=3",
                              "--seed=3",
                              "--out=" + table});
  const Said judged = keenfall({"judge", table, "--json"});

  EXPECT_EQ(made.exit_code, 0) << made.err;
  EXPECT_EQ(judged.exit_code, 0) << judged.err;
  EXPECT_THAT(judged.err, IsEmpty());
  const json comparison = json::parse(judged.out)["comparisons"][0];
  EXPECT_EQ(comparison["a"]["blade"], "AISI A11");
  EXPECT_THAT(comparison["verdict"].get<std::string>(), HasSubstr("longer"));
}

TEST(ASimulatedTrial, GoesIntoANotebookWhoseLogSaysWhatItIs) {
  const std::string notebook = nothing_at("simulated.keen");
  keenfall({"new", notebook});

  const Said made = keenfall({"simulate",
                              "--runs=2",
                              "--cuts=31",
                              "--seed=9",
                              "--notebook=" + notebook,
                              "--trial=tried out",
                              "--why=to see"});

  EXPECT_EQ(made.exit_code, 0) << made.err;
  EXPECT_THAT(keenfall({"log", notebook}).out, HasSubstr("simulated, seed 9"));
  const Said shown = keenfall({"show", notebook, "tried out"});
  EXPECT_THAT(shown.out, HasSubstr("simulated: no edge was cut"));
  EXPECT_EQ(keenfall({"check", notebook}).exit_code, 0);
}

TEST(ASimulatedTrial, IsNotAddedToOneThatIsThere) {
  const std::string notebook = nothing_at("simulated_twice.keen");
  keenfall({"new", notebook});
  const auto simulated = [&](const std::string& option) {
    return keenfall({"simulate", "--runs=2", "--cuts=15", option, "--notebook=" + notebook});
  };

  const Said first = simulated("--quiet");
  const Said again = simulated("--quiet");
  const Said other_seed = simulated("--seed=2");
  const Said other_name = simulated("--trial=once more");

  EXPECT_EQ(first.exit_code, 0) << first.err;
  EXPECT_EQ(again.exit_code, 3);
  EXPECT_THAT(again.err, HasSubstr("seed 1” already"));
  EXPECT_THAT(again.err, HasSubstr("--trial=NAME"));
  EXPECT_EQ(other_seed.exit_code, 0) << other_seed.err;
  EXPECT_EQ(other_name.exit_code, 0) << other_name.err;
  EXPECT_THAT(keenfall({"show", notebook}).out, HasSubstr("once more"));
}

TEST(ASimulatedTrial, IsNotPutIntoANotebookThatIsNotThere) {
  const Said made =
      keenfall({"simulate", "--runs=2", "--cuts=15", "--notebook=" + nothing_at("nowhere.keen")});

  EXPECT_EQ(made.exit_code, 4);
  EXPECT_THAT(made.err, HasSubstr("nothing was simulated"));
}

TEST(ASimulatedTrial, WritesJsonOfTheDocumentedShape) {
  const Said made = keenfall({"simulate", "--runs=2", "--cuts=31", "--json"});

  EXPECT_EQ(wire::testing::faults_against_schema(json::parse(made.out), "simulation.schema.json"),
            "");
}

TEST(ASimulatedEdge, WritesJsonOfTheDocumentedShape) {
  const Said told = keenfall({"apex", "--cuts=31", "--json"});

  EXPECT_EQ(wire::testing::faults_against_schema(json::parse(told.out), "apex.schema.json"), "");
}

TEST(ASimulatedEdge, IsOfSteelsMediaAndFinishesOfOnesOwn) {
  const std::string steels = nothing_at("steels.csv");
  std::ofstream(steels) << "name;hardness_hrc;matrix_hv;carbide_volume_fraction;"
                           "toughness_mpa_sqrt_m\nours;58,5;640;0,02;30\n";
  const std::string media = nothing_at("media.csv");
  std::ofstream(media) << "name,abrasive_hv,groove_width_um,"
                          "reference_wear_rate_mm3_per_newton_metre\nfelt,600,0.5,1e-6\n";
  const std::string finishes = nothing_at("finishes.csv");
  std::ofstream(finishes) << "name,land_width_um\nhoned,0.3\n";

  const Said told = keenfall({"apex",
                              "--steels=" + steels,
                              "--media=" + media,
                              "--finishes=" + finishes,
                              "--steel=ours",
                              "--medium=felt",
                              "--finish=honed"});

  EXPECT_EQ(told.exit_code, 0) << told.err;
  EXPECT_THAT(told.out, HasSubstr("An edge of ours (20"));
  EXPECT_THAT(told.out, HasSubstr("100 % was worn away"));
}

TEST(Help, KnowsTheSimulator) {
  EXPECT_THAT(keenfall({"help"}).out, HasSubstr("keenfall simulate"));
  EXPECT_THAT(keenfall({"help", "simulate"}).out, HasSubstr("--schedule=PARTS"));
  EXPECT_THAT(keenfall({"apex", "--help"}).out, HasSubstr("--list"));
}

}  // namespace
}  // namespace keenfall::journeys
