// Open data that is not ours: flank wear of milling inserts (examples/milling/README.md), judged at
// the end of their life, 0.3 mm.
#include "child_process.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::journeys {
namespace {

using nlohmann::json;
using ::testing::DoubleEq;
using ::testing::IsSupersetOf;
using ::testing::SizeIs;

// One fit for all tests of this file, by the command of examples/milling/README.md.
const Said& judged() {
  static const Said said =
      run({.program = KEENFALL_PROGRAM,
           .words = {"judge",
                     std::string(KEENFALL_SOURCE_DIR) + "/examples/milling/milling_flank_wear.csv",
                     "--column=blade=condition",
                     "--column=medium=material",
                     "--column=run=insert_set",
                     "--column=cuts=time_min",
                     "--column=reading=vb_mm",
                     "--define-kind=flank_wear:mm:lower:zero=below:0.01",
                     "--kind=flank_wear",
                     "--stop-reading=0.3mm",
                     "--json"},
           .environment = {{"LC_ALL", "C.UTF-8"}}});
  return said;
}

const json& judgement() {
  static const json document = json::parse(judged().out);
  return document;
}

// The one part of `list` whose `key` reads `wanted`; null when there is none.
json part_with(const json& list, const std::string& key, const std::string& wanted) {
  const auto found = std::ranges::find_if(
      list, [&](const json& part) { return part.contains(key) && part[key] == wanted; });
  return found == list.end() ? json() : *found;
}

// Minutes to 0.3 mm, by hand from the table: log reading linear in time between the two readings
// about 0.3 mm (t = t0 + (t1 - t0) log(0.3 / y0) / log(y1 / y0)), then the geometric mean of the
// runs.
struct ByHand {
  const char* condition;
  double minutes;
};

const std::vector<ByHand>& by_hand() {
  static const std::vector<ByHand> crossings{
      {"cast_iron_doc0.75_f0.25", 57.67},  // 59.52 and 55.88
      {"cast_iron_doc0.75_f0.50", 42.24},  // 43.88 and 40.65
      {"cast_iron_doc1.50_f0.25", 22.21},  // 20.55 and 24.00
      {"cast_iron_doc1.50_f0.50", 26.47},  // 29.38 and 23.85
      {"steel_doc0.75_f0.25", 14.87},      // 14.28 and 15.49
      {"steel_doc0.75_f0.50", 8.04},       // 6.00 (read as 0.30) and 10.77
      {"steel_doc1.50_f0.25", 6.74},       // 6.74; the other run has one reading, a zero
      {"steel_doc1.50_f0.50", 5.19},       // 6.24 and 4.31
  };
  return crossings;
}

TEST(TheMillingTrial, EndsWithZero) { EXPECT_EQ(judged().exit_code, 0) << judged().err; }

TEST(TheMillingTrial, HasAUsableFit) {
  EXPECT_TRUE(judgement()["fit"]["usable"].get<bool>()) << judgement()["fit"]["reasons"];
}

TEST(TheMillingTrial, SetsASingleZeroReadingAsideAndSaysWhy) {
  const json aside = part_with(judgement()["runs"], "not_used_because", "every reading is zero");

  ASSERT_FALSE(aside.is_null());
  EXPECT_EQ(aside["name"], "1");
  EXPECT_EQ(judgement()["arms"][aside["arm"].get<std::size_t>()]["blade"], "steel_doc1.50_f0.25");
}

// Every remark of the runs as "condition/set: remark".
std::vector<std::string> remarks() {
  std::vector<std::string> all;
  for (const json& one : judgement()["runs"]) {
    const std::string condition = judgement()["arms"][one["arm"].get<std::size_t>()]["blade"];
    for (const std::string remark : one["remarks"]) {
      all.push_back(condition + "/" + one["name"].get<std::string>() + ": " + remark);
    }
  }
  return all;
}

// Nine cases hold a zero, counted in the table; one of them is set aside.
TEST(TheMillingTrial, SaysOfEveryZeroThatItIsTakenAsBelowTheResolution) {
  const std::vector<std::string> said = remarks();

  EXPECT_EQ(std::ranges::count_if(said,
                                  [](const std::string& r) {
                                    return r.find("reads zero at ") != std::string::npos &&
                                           r.find(" minute") != std::string::npos &&
                                           r.find(": taken as below 0.01 mm") != std::string::npos;
                                  }),
            8);
}

// The only two falls of the table, both of case 1: 0.29 to 0.28 mm and 0.50 to 0.44 mm.
TEST(TheMillingTrial, NamesBothFallsOfWear) {
  EXPECT_THAT(
      remarks(),
      IsSupersetOf(
          {"cast_iron_doc1.50_f0.50/1: gets keener from 22 to 26 minutes (0.290 to 0.280 mm)",
           "cast_iron_doc1.50_f0.50/1: gets keener from 44 to 48 minutes (0.500 to 0.440 mm)"}));
}

// Six pairs of four conditions in each of two materials.
TEST(TheMillingTrial, ComparesEveryPairAtTheReadingAskedFor) {
  ASSERT_THAT(judgement()["comparisons"], SizeIs(12));
  for (const json& comparison : judgement()["comparisons"]) {
    EXPECT_EQ(comparison["at"]["what"], "common_reading");
    EXPECT_THAT(comparison["at"]["reading"].get<double>(), DoubleEq(0.3));
  }
}

TEST(TheMillingTrial, PutsTheTimesTo03MillimetresWhereHandInterpolationPutsThem) {
  for (const ByHand& expected : by_hand()) {
    const json arm = part_with(judgement()["arms"], "blade", expected.condition);

    ASSERT_FALSE(arm.is_null()) << expected.condition;
    EXPECT_NEAR(arm["common_reading_cuts"]["median"].get<double>(),
                expected.minutes,
                0.25 * expected.minutes)
        << expected.condition;
  }
}

}  // namespace
}  // namespace keenfall::journeys
