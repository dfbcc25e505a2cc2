#include "wire/app_json.h"

#include "wire/schema_faults_test.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace keenfall::wire {
namespace {

using nlohmann::json;

TEST(TheAppAsJson, NamesTheOpenNotebook) {
  const AppTold app{.program_version = "0.1.0",
                    .notebook = OpenNotebookTold{.name = "a.keen",
                                                 .path = "/home/r/a.keen",
                                                 .uid = "00112233445566778899aabbccddeeff",
                                                 .may_write = false,
                                                 .why_not = "You have no right to."},
                    .cautions = {"A blunt edge slips."},
                    .folder = "/home/r"};

  const json document = json::parse(app_to_json(app));

  EXPECT_EQ(testing::faults_against_api(document, "App"), "");
  EXPECT_EQ(document["notebook"]["why_not"], "You have no right to.");
  EXPECT_EQ(document["cautions"][0], "A blunt edge slips.");
}

// 1 in = 25.4 mm and 1 ft = 0.3048 m exactly (NIST SP 811 B.8).
TEST(TheAppAsJson, OffersUnitsToTellAndTypeIn) {
  const json units = json::parse(app_to_json({.program_version = "0.1.0", .folder = "/"}))["units"];

  EXPECT_EQ(units["force"][1], (json{{"unit", "N"}, {"words", "newtons (N)"}, {"newton", 1.0}}));
  EXPECT_EQ(units["length"][1]["mm"], 25.4);
  EXPECT_EQ(units["length"][1]["long_unit"], "ft");
  EXPECT_NEAR(units["length"][1]["long_m"].get<double>(), 0.3048, 1e-12);
}

TEST(TheAppAsJson, HasNoNotebookWhereNoneIsOpen) {
  const json document = json::parse(app_to_json({.program_version = "0.1.0", .folder = "/"}));

  EXPECT_EQ(testing::faults_against_api(document, "App"), "");
  EXPECT_FALSE(document.contains("notebook"));
}

}  // namespace
}  // namespace keenfall::wire
