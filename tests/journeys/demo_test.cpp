// The demo, and its table judged again.
#include "child_process.h"

#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::journeys {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

Said the_program(const std::vector<std::string>& words) {
  return run({.program = KEENFALL_PROGRAM, .words = words, .environment = {{"LC_ALL", "C.UTF-8"}}});
}

// The answer without what may differ from run to run.
json lasting_part(const std::string& text) {
  json document = json::parse(text);
  document["fit"].erase("cpu_seconds");
  return document;
}

std::string without_the_time(const std::string& text) {
  return std::regex_replace(text, std::regex("\"cpu_seconds\": *[-+0-9.e]+"), "");
}

std::string verdict_on(const json& document,
                       const std::string& medium,
                       const std::string& a,
                       const std::string& b) {
  for (const json& comparison : document["comparisons"]) {
    const json& left = comparison["a"];
    if (left["medium"].get<std::string>().find(medium) == std::string::npos) continue;
    if (left["blade"] == a && comparison["b"]["blade"] == b) return comparison["verdict"];
  }
  return "not compared this way round";
}

TEST(TheDemo, WritesJsonOfTheDocumentedShape) {
  EXPECT_EQ(wire::testing::faults_against_schema(json::parse(the_program({"demo", "--json"}).out),
                                                 "judgement.schema.json"),
            "");
}

// The invented truth behind the demo: half keenness 108 against 34 cuts on new matting, 9.2 against
// 8.4 on uplifted; worth-it margin 1.5.
TEST(TheDemo, FindsTheLargeDifferenceAndNoneThatIsNotThere) {
  const Said said = the_program({"demo", "--no-open", "--json"});
  const json document = json::parse(said.out);

  EXPECT_EQ(said.exit_code, 0) << said.err;
  EXPECT_EQ(verdict_on(document, "new", "C", "A"), "longer, and worth having");
  for (const json& comparison : document["comparisons"]) {
    const std::string medium = comparison["a"]["medium"];
    if (medium.find("uplifted") != std::string::npos) {
      EXPECT_NE(comparison["verdict"], "longer, and worth having");
    }
  }
}

TEST(TheDemo, SaysThatItsSeedWasPickedAndOnlyThen) {
  EXPECT_THAT(the_program({"demo", "--seed=7"}).out,
              HasSubstr("drawn from seed 32 (picked; --trial-seed draws another)"));
  EXPECT_THAT(the_program({"demo", "--trial-seed=7"}).out, HasSubstr("drawn from seed 7; "));
}

TEST(TheDemo, EndsWithItsVerdictsPrinted) {
  const Said said = the_program({"demo", "--no-open"});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.out, HasSubstr("C stays keen"));
  EXPECT_THAT(said.err, IsEmpty());
}

TEST(TheDemo, GivesTheSameBytesOnOneThreadAndOnFourButForTheTimeItTook) {
  const Said one = the_program({"demo", "--json", "--threads=1"});
  const Said four = the_program({"demo", "--json", "--threads=4"});

  EXPECT_EQ(without_the_time(one.out), without_the_time(four.out));
}

TEST(TheDemo, KeepsItsTrialWhenOnlyTheSeedOfTheFitChanges) {
  const json one = json::parse(the_program({"demo", "--json", "--seed=1"}).out);
  const json other = json::parse(the_program({"demo", "--json", "--seed=2"}).out);

  ASSERT_EQ(one["runs"].size(), other["runs"].size());
  for (std::size_t i = 0; i < one["runs"].size(); ++i) {
    EXPECT_EQ(one["runs"][i]["remarks"], other["runs"][i]["remarks"]);
    EXPECT_EQ(one["runs"][i]["last_cuts"], other["runs"][i]["last_cuts"]);
  }
  EXPECT_NE(one["arms"], other["arms"]);
}

TEST(TheDemo, ComesToTheSameVerdictsFromItsTable) {
  const auto table = std::filesystem::temp_directory_path() /
                     ("keenfall_demo_" + std::to_string(getpid()) + ".csv");
  std::filesystem::remove(table);

  const Said demo = the_program({"demo", "--json", "--table", table.string()});
  const Said judged = the_program({"judge", table.string(), "--json"});
  std::filesystem::remove(table);

  ASSERT_EQ(judged.exit_code, 0) << judged.err;
  const json from_demo = json::parse(demo.out);
  const json from_table = json::parse(judged.out);
  EXPECT_EQ(verdict_on(from_demo, "new", "C", "A"), verdict_on(from_table, "new", "C", "A"));
}

TEST(TheDemo, IsMadeAnewByAnotherTrialSeed) {
  const Said one = the_program({"demo", "--json", "--trial-seed=1"});
  const Said other = the_program({"demo", "--json", "--trial-seed=2"});

  EXPECT_NE(lasting_part(one.out)["arms"], lasting_part(other.out)["arms"]);
}

}  // namespace
}  // namespace keenfall::journeys
