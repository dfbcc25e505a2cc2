#include "wear/constant_rows.h"

#include <gtest/gtest.h>

#include <set>
#include <stdexcept>
#include <string>
#include <string_view>

namespace keenfall::wear {
namespace {

AbrasiveMedium gritty_matting() { return known_media()[1]; }

template <class Rows>
const typename Rows::value_type& row_called(const Rows& rows, std::string_view field) {
  for (const auto& row : rows) {
    if (row.field == field) return row;
  }
  throw std::out_of_range(std::string(field));
}

// The ranges of the table in docs/methods/apex.md.
TEST(ConstantRows, GiveTheRangesOfTheMethodPage) {
  const auto estimate = [](std::string_view field) {
    return constant_of(row_called(medium_constants(), field), gritty_matting()).estimate;
  };

  EXPECT_NEAR(estimate("abrasive_hv").lo, 880, 1e-9);
  EXPECT_NEAR(estimate("abrasive_hv").hi, 1320, 1e-9);
  EXPECT_NEAR(estimate("reference_wear_rate_mm3_per_newton_metre").lo, 3e-7, 1e-15);
  EXPECT_EQ(estimate("median_diameter_um").lo, 30);
  EXPECT_EQ(estimate("median_diameter_um").typical, 60);
  EXPECT_EQ(estimate("median_diameter_um").hi, 100);
  EXPECT_EQ(estimate("resistance_ratio_cap").hi, 20);
}

TEST(ConstantRows, HoldWhatShowsInAProductOnly) {
  for (const char* field : {"line_load_newton_per_mm", "sliding_m_per_cut"}) {
    const auto& row = row_called(medium_constants(), field);
    EXPECT_TRUE(row.is_held());
    EXPECT_TRUE(constant_of(row, gritty_matting()).estimate.is_known());
  }
}

// Each row reaches a number of its own, so that none is said twice and none stands for another.
TEST(ConstantRows, ReachEachANumberOfItsOwn) {
  AbrasiveMedium medium;
  double number = 0;
  for (const auto& row : medium_constants()) row.in(medium) = ++number;
  double expected = 0;
  std::set<std::string_view> fields;
  for (const auto& row : medium_constants()) {
    EXPECT_EQ(row.number_in(medium), ++expected) << row.field;
    EXPECT_TRUE(fields.insert(row.field).second) << row.field;
    EXPECT_NE(materials::find_source(row.from.source_key), nullptr) << row.field;
  }
}

TEST(ConstantRows, TakeWhatSomebodyWroteDownAsTheySayIt) {
  AbrasiveMedium own = gritty_matting();
  own.acts.particles.hits_per_mm_cut = 0.3;
  const EdgeFinish honed{.land_width_um = 0.3};

  const auto hits = constant_of(row_called(medium_constants(), "hits_per_mm_cut"), own).estimate;
  const auto land = constant_of(row_called(finish_constants(), "land_width_um"), honed).estimate;

  EXPECT_TRUE(hits.is_known());
  EXPECT_EQ(hits.from.mark, materials::TrustMark::declared);
  EXPECT_TRUE(land.is_known());
  EXPECT_EQ(land.from.mark, materials::TrustMark::declared);
  EXPECT_TRUE(is_known(fine_finish()));
  EXPECT_FALSE(is_known(honed));
}

TEST(ConstantRows, OfTheModelReachDamageAndReading) {
  ApexScenario scenario;

  row_called(model_constants(), "push_reach_um").in(scenario) = 7;
  row_called(model_constants(), "fold_life_cuts").in(scenario) = 9;

  EXPECT_EQ(scenario.reading.push_reach_um, 7);
  EXPECT_EQ(scenario.damage.fold_life_cuts, 9);
  EXPECT_EQ(model_constants().size(), 8U);
}

}  // namespace
}  // namespace keenfall::wear
