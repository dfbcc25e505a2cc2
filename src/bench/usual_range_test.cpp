#include "bench/usual_range.h"

#include "bench/a_sheet_test.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace keenfall::bench {
namespace {

TEST(UsualRange, GoesByTheStartGateBeforeAnythingIsRead) {
  const auto usual = usual_range(a_sheet(), {}, {});

  EXPECT_FALSE(surprises(usual, 118));
  EXPECT_TRUE(surprises(usual, 10.4));
  EXPECT_TRUE(surprises(usual, 1040));
}

TEST(UsualRange, GoesByTheCheckpointBeforeForItsFirstReading) {
  const std::vector<SpotReading> before{{.station = "heel", .reading = 150}};
  const auto usual = usual_range(a_sheet(), {}, before);

  EXPECT_FALSE(surprises(usual, 290));
  EXPECT_FALSE(surprises(usual, 120));
  EXPECT_TRUE(surprises(usual, 15));
  EXPECT_TRUE(surprises(usual, 1500));
}

TEST(UsualRange, TurnsRoundWhereKeenerReadsHigher) {
  RunSheet sheet = a_sheet();
  sheet.kind = *trials::find_reading_kind("card_bite");
  const std::vector<SpotReading> before{{.station = "heel", .reading = 9}};
  const auto usual = usual_range(sheet, {}, before);

  EXPECT_FALSE(surprises(usual, 4));
  EXPECT_TRUE(surprises(usual, 18));
}

TEST(UsualRange, GoesByWhatStandsAtTheCheckpoint) {
  const std::vector<SpotReading> here{{.station = "heel", .reading = 200},
                                      {.station = "middle", .reading = 210}};
  const auto usual = usual_range(a_sheet(), here, {});

  EXPECT_FALSE(surprises(usual, 260));
  EXPECT_TRUE(surprises(usual, 20.5));
  EXPECT_TRUE(surprises(usual, 502));
}

TEST(UsualRange, IsAbsentWithNothingToGoBy) {
  RunSheet sheet = a_sheet();
  sheet.start_gate.reset();
  EXPECT_FALSE(usual_range(sheet, {}, {}));

  sheet.kind = *trials::find_reading_kind("chip_count");
  const std::vector<SpotReading> before{{.station = "", .reading = 0}};
  EXPECT_FALSE(usual_range(sheet, {}, before));
}

// Who takes good readings is asked to look again less than once in a hundred.
TEST(UsualRange, SeldomDoubtsAGoodReading) {
  std::mt19937_64 random(3);
  std::normal_distribution<double> error(0, 0.12);
  int doubted = 0;
  constexpr int kReadings = 20000;

  for (int i = 0; i < kReadings; ++i) {
    const std::vector<SpotReading> here{{.station = "", .reading = 200 * std::exp(error(random))}};
    if (surprises(usual_range(a_sheet(), here, {}), 200 * std::exp(error(random)))) ++doubted;
  }

  EXPECT_LT(doubted, kReadings / 100);
}

}  // namespace
}  // namespace keenfall::bench
