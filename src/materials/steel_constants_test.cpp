#include "materials/steel_constants.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::materials {
namespace {

using ::testing::ElementsAre;

std::vector<std::string> fields_of(const std::vector<UncertainConstant>& constants) {
  std::vector<std::string> fields;
  for (const UncertainConstant& constant : constants) fields.push_back(constant.field);
  return fields;
}

TEST(SteelConstants, AreTheNumbersOfTheTableWithTheirRangesAndSources) {
  const Microstructure steel = find_microstructure("AISI A11").value();

  const auto constants = constants_of(steel);

  EXPECT_THAT(fields_of(constants),
              ElementsAre("hardness_hrc",
                          "matrix_hv",
                          "carbide_volume_fraction",
                          "carbide_hv",
                          "carbide_diameter_um",
                          "toughness_mpa_sqrt_m"));
  EXPECT_EQ(constants[0].estimate.typical, steel.hardness_hrc);
  EXPECT_TRUE(constants[0].estimate.is_known());
  EXPECT_EQ(constants[5].estimate, (Estimate{14, 10, 17, steel.toughness_mpa_sqrt_m_range.from}));
}

TEST(SteelConstants, LieInTheirRangesWithASourceThatIsKnown) {
  for (const Microstructure& steel : known_microstructures()) {
    for (const UncertainConstant& constant : constants_of(steel)) {
      const Estimate& estimate = constant.estimate;
      EXPECT_LE(estimate.lo, estimate.typical) << steel.name << constant.name;
      EXPECT_GE(estimate.hi, estimate.typical) << steel.name << constant.name;
      EXPECT_NE(find_source(estimate.from.source_key), nullptr) << steel.name << constant.name;
    }
  }
}

// A steel tempered beyond what its row says of the matrix: the range stretches to hold the figure.
TEST(SteelConstants, StretchARangeThatDoesNotHoldTheFigure) {
  Microstructure steel = find_microstructure("AISI A11").value();
  steel.toughness_mpa_sqrt_m = 30;

  const Estimate toughness = constants_of(steel).back().estimate;

  EXPECT_EQ(toughness.lo, 10);
  EXPECT_EQ(toughness.hi, 30);
}

}  // namespace
}  // namespace keenfall::materials
