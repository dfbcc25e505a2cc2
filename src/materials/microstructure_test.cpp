#include "materials/microstructure.h"

#include "materials/hardness.h"
#include "materials/steels.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace keenfall::materials {
namespace {

using testing::HasSubstr;

Microstructure of(std::string_view steel) { return find_microstructure(steel).value(); }

// ASTM E140: 62 HRC is 746 HV, 54 is 577, 61 is 720; 58.5 lies between 653 and 674.
TEST(Microstructures, AreAsHardAsE140MakesTheirRockwell) {
  EXPECT_DOUBLE_EQ(of("AISI A11").bulk_hv, 746);
  EXPECT_DOUBLE_EQ(of("75Ni8").bulk_hv, 577);
  EXPECT_DOUBLE_EQ(of("X153CrMoV12").bulk_hv, 720);
  EXPECT_DOUBLE_EQ(of("X90CrMoV18").bulk_hv, 663.5);
}

// The invented trial of `keenfall demo` states these hardnesses.
TEST(Microstructures, HoldTheThreeKnivesOfTheDemo) {
  EXPECT_DOUBLE_EQ(of("EN 1.1248").hardness_hrc, 58);
  EXPECT_DOUBLE_EQ(of("EN 1.4112").hardness_hrc, 58.5);
  EXPECT_DOUBLE_EQ(of("EN 1.2379").hardness_hrc, 61);
}

TEST(Microstructures, AreFoundByAnyDesignationOfTheirSteel) {
  EXPECT_EQ(of("1.4116").name, "X50CrMoV15");
  EXPECT_EQ(of("t30111").name, "AISI A11");
  EXPECT_EQ(of("C75S (EN 1.1248)").name, "C75S");
  EXPECT_EQ(of("AISI 1095").name, "SAE 1095");
}

TEST(Microstructures, OfASteelWithoutARowAreRefusedWithThoseThereAre) {
  const auto none = find_microstructure("X46Cr13");

  ASSERT_FALSE(none.has_value());
  EXPECT_EQ(none.error().kind, base::ProblemKind::unknown_name);
  EXPECT_THAT(none.error().sentence, HasSubstr("of X46Cr13 there is no row"));
  EXPECT_THAT(none.error().accepted, HasSubstr("AISI A11"));
}

// 1.2510 is only near AISI O1: its limits are its own.
TEST(Microstructures, AreNotLentToANearGradeOfAnotherStandard) {
  EXPECT_TRUE(find_microstructure("AISI O1").has_value());
  EXPECT_FALSE(find_microstructure("1.2510").has_value());
}

TEST(Microstructures, OfUnknownSteelsAreRefusedAsTheTableOfSteelsDoes) {
  EXPECT_EQ(find_microstructure("unobtainium").error(), find_steel("unobtainium").error());
}

TEST(Microstructures, NumberAtLeastTenInTheOrderOfTheTableOfSteels) {
  const auto rows = known_microstructures();

  ASSERT_GE(rows.size(), 10U);
  std::size_t last = 0;
  for (const Microstructure& row : rows) {
    const auto steels = known_steels();
    const auto place = static_cast<std::size_t>(std::ranges::find(steels, row.name, &Steel::name) -
                                                steels.begin());
    EXPECT_LT(place, steels.size()) << row.name;
    EXPECT_GE(place, last) << row.name;
    last = place;
  }
}

TEST(Microstructures, LieInsideTheirPlausibleRangesAndNameTheirSources) {
  for (const Microstructure& row : known_microstructures()) {
    const auto expect_inside = [&row](double typical, const PlausibleRange& range) {
      EXPECT_LE(range.lo, typical) << row.name;
      EXPECT_GE(range.hi, typical) << row.name;
      EXPECT_LT(range.lo, range.hi) << row.name;
      EXPECT_NE(find_source(range.from.source_key), nullptr) << row.name;
    };
    expect_inside(row.matrix_hv, row.matrix_hv_range);
    expect_inside(row.carbide_volume_fraction, row.carbide_volume_fraction_range);
    expect_inside(row.carbide_hv, row.carbide_hv_range);
    expect_inside(row.carbide_diameter_um, row.carbide_diameter_um_range);
    expect_inside(row.toughness_mpa_sqrt_m, row.toughness_mpa_sqrt_m_range);
    EXPECT_NE(find_source(row.hardness_from.source_key), nullptr) << row.name;
    EXPECT_GT(row.carbide_diameter_um_range.lo, 0) << row.name;
  }
}

// What is softer than its carbides is softer than the whole.
TEST(Microstructures, HaveAMatrixNoHarderThanTheWholeAndSofterThanItsCarbides) {
  for (const Microstructure& row : known_microstructures()) {
    EXPECT_LE(row.matrix_hv, row.bulk_hv) << row.name;
    EXPECT_LT(row.matrix_hv, row.carbide_hv) << row.name;
  }
}

// The table of steels calls its carbide shares good to about 30 %.
TEST(Microstructures, AgreeWithTheCarbideOfTheTableOfSteelsWithinItsThirtyPercent) {
  for (const Microstructure& row : known_microstructures()) {
    const Steel steel = find_steel(row.name).value().steel;
    if (steel.carbides.empty()) continue;
    double lo_percent = 0;
    double hi_percent = 0;
    for (const CarbideShare& share : steel.carbides) {
      lo_percent += share.lo_percent;
      hi_percent += share.hi_percent;
    }
    EXPECT_GE(100 * row.carbide_volume_fraction, 0.7 * lo_percent) << row.name;
    EXPECT_LE(100 * row.carbide_volume_fraction, 1.3 * hi_percent) << row.name;
  }
}

// 75Ni8 stands for tough strip at 54 HRC, to which the rules of practice were tuned; it is said
// wherever both hardnesses are shown.
TEST(Microstructures, AreAtAHardnessAtWhichTheirSteelsAreUsedOrSaySo) {
  for (const Microstructure& row : known_microstructures()) {
    ASSERT_TRUE(find_steel(row.name).value().steel.working_hardness.has_value()) << row.name;
    EXPECT_EQ(
        beside_usual_hardness(row),
        row.name == "75Ni8" ? "softer than the 57 to 62 HRC at which 75Ni8 is usually used" : "")
        << row.name;
  }
  EXPECT_THAT(beside_usual_hardness(at_hardness(of("C75S"), 63).value()),
              HasSubstr("harder than the 55 to 60 HRC"));
  EXPECT_EQ(beside_usual_hardness({.name = "our strip", .hardness_hrc = 30}), "");
}

// Their carbide is one that the table of steels names.
TEST(Microstructures, HoldTheCarbideThatTheTableOfSteelsNames) {
  for (const Microstructure& row : known_microstructures()) {
    const Steel steel = find_steel(row.name).value().steel;
    for (const CarbideShare& share : steel.carbides) {
      EXPECT_NE(row.carbide_type.find(share.type), std::string_view::npos)
          << row.name << ": " << row.carbide_type << " without " << share.type;
    }
  }
}

// E140: 60 HRC is 697 HV, 61 is 720.
TEST(Microstructures, TemperedToAnotherHardnessKeepTheirCarbides) {
  const Microstructure d2 = of("AISI D2");

  const Microstructure softer = at_hardness(d2, 60).value();

  EXPECT_DOUBLE_EQ(softer.bulk_hv, 697);
  EXPECT_DOUBLE_EQ(softer.matrix_hv, d2.matrix_hv * 697 / 720);
  EXPECT_DOUBLE_EQ(softer.matrix_hv_range.lo, d2.matrix_hv_range.lo * 697 / 720);
  EXPECT_DOUBLE_EQ(softer.carbide_volume_fraction, d2.carbide_volume_fraction);
  EXPECT_EQ(at_hardness(d2, 61).value(), d2);
}

TEST(Microstructures, AreNotTakenFarFromTheHardnessTheyAreKnownAt) {
  EXPECT_EQ(at_hardness(of("75Ni8"), 60.5).error().sentence,
            "75Ni8 is known at 54 HRC and can be asked for from 48 to 60 HRC, not at 60.5 HRC.");
  for (const double hrc : {48.0, 60.0}) EXPECT_TRUE(at_hardness(of("75Ni8"), hrc)) << hrc;
  EXPECT_FALSE(at_hardness(of("75Ni8"), 47.5));
}

// E140 ends at 68 HRC.
TEST(Microstructures, AreNotTakenBeyondTheTableOfHardness) {
  EXPECT_TRUE(at_hardness(of("AISI T15"), 68));
  EXPECT_THAT(at_hardness(of("AISI T15"), 69).error().sentence, HasSubstr("to 68 HRC"));
}

}  // namespace
}  // namespace keenfall::materials
