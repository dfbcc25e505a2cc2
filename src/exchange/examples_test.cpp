// The tables of examples/ come in as their pages say.
#include "exchange/long_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;

trials::Trial example(const std::string& file, const TableOptions& options = {}) {
  const std::vector<std::string> paths = {KEENFALL_SOURCE_DIR "/examples/" + file};
  const auto trial = take_tables(paths, options);
  if (!trial) throw std::runtime_error(base::in_words(trial.error().front()));
  return *trial;
}

TEST(ThePaperTally, IsTakenWithOneReadingStruck) {
  const trials::Trial trial = example("paper-tally/paper_tally.csv");
  std::size_t struck = 0;
  for (const trials::Run& run : trial.runs) {
    struck += static_cast<std::size_t>(std::ranges::count_if(
        run.readings, [](const trials::Reading& reading) { return !!reading.struck_reason; }));
  }

  EXPECT_EQ(trial.runs.size(), 6U);
  EXPECT_EQ(struck, 1U);
  EXPECT_EQ(trial.series.at(0).unit, "N");
}

TEST(ThePaperTally, HasOneReadingInDoubt) {
  const trials::Trial trial = example("paper-tally/paper_tally.csv");
  std::vector<double> doubtful;
  for (const trials::Run& run : trial.runs) {
    for (const trials::Reading& reading : run.readings) {
      if (reading.doubtful_reason) doubtful.push_back(reading.reading);
    }
  }

  EXPECT_EQ(doubtful, std::vector<double>{2.42});
}

TEST(TheEdgeLives, AreTheSameInBothFiles) {
  trials::Trial sheet = example("edge-lives/edge_lives.ods");
  trials::Trial text = example("edge-lives/edge_lives.csv");

  EXPECT_EQ(sheet.runs.size(), 15U);
  EXPECT_TRUE(sheet.runs == text.runs);
  EXPECT_EQ(sheet.runs.at(6).edge_lives.at(0).failed_by_cuts, 5);
  EXPECT_FALSE(sheet.runs.at(11).edge_lives.at(0).failed_by_cuts);
}

// Gaps and outliers of the published table, found by reading it.
TEST(TheEdgeAngles, NameTheirGapsAndFarReadings) {
  const trials::Trial trial =
      example("edge-angles/edge_angle_vs_strokes.csv",
              {.columns = {{"blade", "stone"},
                           {"medium", "experiment"},
                           {"specimen", "sample"},
                           {"run", "sample"},
                           {"cuts", "strokes"},
                           {"reading", "angle_three_point_deg"}},
               .defined_kinds = {{.name = "edge_angle", .words = "edge angle", .unit = "deg"}},
               .where = {{"distance_from_edge_mm", "1"}}});

  EXPECT_EQ(trial.runs.size(), 56U);
  EXPECT_THAT(trial.remarks,
              Contains("Only rows with distance_from_edge_mm=1 were taken; left out: 276 of 552 "
                       "rows."));
  EXPECT_THAT(trial.remarks,
              Contains(HasSubstr("Run LYDIT4-8 of blade lydite in aVSn-experiment "
                                 "has no reading at 250 strokes")));
  EXPECT_THAT(trial.remarks, Contains(HasSubstr("reads 135 at 0 strokes, far from")));
  EXPECT_THAT(trial.remarks, Contains(HasSubstr("reads 172 at 1000 strokes, far from")));
}

}  // namespace
}  // namespace keenfall::exchange
