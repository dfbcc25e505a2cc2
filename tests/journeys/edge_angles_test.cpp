// Open data that is not ours: edge angles of stone tools (examples/edge-angles/README.md). They
// hardly blunt, so little can be said; its gaps and outliers must be named.
#include "child_process.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace keenfall::journeys {
namespace {

using nlohmann::json;
using ::testing::AnyOf;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::SizeIs;

// One fit for all tests of this file, by the command of examples/edge-angles/README.md.
const Said& edge_angles_judged() {
  static const Said said = run({.program = KEENFALL_PROGRAM,
                                .words = {"judge",
                                          std::string(KEENFALL_SOURCE_DIR) +
                                              "/examples/edge-angles/edge_angle_vs_strokes.csv",
                                          "--where=distance_from_edge_mm=1",
                                          "--column=blade=stone",
                                          "--column=medium=experiment",
                                          "--column=specimen=sample",
                                          "--column=run=sample",
                                          "--column=cuts=strokes",
                                          "--column=reading=angle_three_point_deg",
                                          "--define-kind=edge_angle:deg:lower:largest=180",
                                          "--kind=edge_angle",
                                          "--json"},
                                .environment = {{"LC_ALL", "C.UTF-8"}}});
  return said;
}

const json& edge_angles_judgement() {
  static const json document = json::parse(edge_angles_judged().out);
  return document;
}

// 0 or 1: the fit's own checks may just pass or just fail.
TEST(TheEdgeAngles, AreJudgedWithoutTrouble) {
  EXPECT_THAT(edge_angles_judged().exit_code, AnyOf(0, 1)) << edge_angles_judged().err;
  EXPECT_THAT(edge_angles_judgement()["runs"], SizeIs(56));
}

TEST(TheEdgeAngles, HaveTheirGapsAndFarReadingsNamed) {
  const auto remarks = edge_angles_judgement()["taken_as"].get<std::vector<std::string>>();

  EXPECT_THAT(remarks,
              Contains(HasSubstr("LYDIT4-8 of blade lydite in aVSn-experiment has no "
                                 "reading at 250 strokes")));
  EXPECT_THAT(remarks, Contains(HasSubstr("reads 135 at 0 strokes, far from")));
}

}  // namespace
}  // namespace keenfall::journeys
