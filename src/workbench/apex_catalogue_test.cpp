#include "workbench/apex_catalogue.h"
#include "materials/steel_constants.h"
#include "wear/constant_rows.h"
#include "workbench/own_file_test.h"
#include "workbench/work_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::workbench {
namespace {

using ::testing::HasSubstr;
using testing_files::OwnFile;

ApexCatalogue known() { return apex_catalogue({}).value(); }

wear::WorkPlan work(const std::string& words) { return work_in_words(words, known()).value(); }

std::string refusal(const std::string& words) {
  const auto plan = work_in_words(words, known());
  return plan ? "not refused" : in_words(plan.error());
}

TEST(ApexCatalogues, KnowSteelsByAnyDesignation) {
  EXPECT_EQ(find_steel(known(), "X90CrMoV18")->name, find_steel(known(), "1.4112")->name);
  EXPECT_EQ(find_finish(known(), "coarse")->finish, wear::coarse_finish());
  EXPECT_EQ(*find_medium(known(), "new sisal matting"), wear::known_media()[0]);
}

TEST(ApexCatalogues, NameWhatIsKnownWhereAskedForSomethingElse) {
  EXPECT_THAT(in_words(find_medium(known(), "rope").error()), HasSubstr("uplifted sisal matting"));
  EXPECT_THAT(in_words(find_finish(known(), "rough").error()), HasSubstr("fine, coarse"));
}

// 61 HRC is 720 HV (ASTM E140).
TEST(ApexCatalogues, TakeSteelsOfAFile) {
  const OwnFile file(
      "name,hardness_hrc,matrix_hv,carbide_volume_fraction,carbide_hv,carbide_diameter_um,"
      "toughness_mpa_sqrt_m\nours,61,660,0.12,1600,8,17\n");

  const auto catalogue = apex_catalogue({.steels = file.path()}).value();

  const auto steel = find_steel(catalogue, "ours").value();
  EXPECT_NEAR(steel.bulk_hv, 720, 1);
  EXPECT_EQ(steel.toughness_mpa_sqrt_m, 17);
  EXPECT_EQ(steel.carbide_diameter_um_range.from.mark, materials::TrustMark::declared);
  EXPECT_EQ(catalogue.own_steels, 1U);
  EXPECT_EQ(catalogue.steels.size(), known().steels.size() + 1);
}

TEST(ApexCatalogues, HoldOneSteelOfANameAndItIsTheFiles) {
  const OwnFile file(
      "name,hardness_hrc,matrix_hv,carbide_volume_fraction,toughness_mpa_sqrt_m\n"
      "c75s,58,640,0.02,30\n");

  const auto catalogue = apex_catalogue({.steels = file.path()}).value();

  EXPECT_EQ(catalogue.steels.size(), known().steels.size());
  for (const char* name : {"c75s", "C75S", "1.1248"}) {
    EXPECT_EQ(find_steel(catalogue, name)->matrix_hv, 640) << name;
  }
  EXPECT_EQ(catalogue.in_place_of_known, std::vector<std::string>{"steel C75S"});
  EXPECT_TRUE(known().in_place_of_known.empty());
}

TEST(ApexCatalogues, TakeSteelsOfAFileWithRanges) {
  const OwnFile file(
      "name,hardness_hrc,matrix_hv,matrix_hv_lo,matrix_hv_hi,carbide_volume_fraction,"
      "toughness_mpa_sqrt_m,toughness_mpa_sqrt_m_hi\nours,61,660,640,,0.12,17,25\n");

  const auto steel = find_steel(apex_catalogue({.steels = file.path()}).value(), "ours").value();

  EXPECT_EQ(steel.matrix_hv_range.lo, 640);
  EXPECT_EQ(steel.matrix_hv_range.hi, 660);
  EXPECT_EQ(steel.toughness_mpa_sqrt_m_range.hi, 25);
  EXPECT_EQ(steel.carbide_hv_range.lo, steel.carbide_hv_range.hi);
}

TEST(ApexCatalogues, NameEveryEndThatLiesOnTheWrongSide) {
  const OwnFile file(
      "name,hardness_hrc,matrix_hv,matrix_hv_lo,carbide_volume_fraction,"
      "toughness_mpa_sqrt_m,toughness_mpa_sqrt_m_hi\na,61,660,700,0.12,17,12\n");

  const auto refused = apex_catalogue({.steels = file.path()});

  ASSERT_FALSE(refused);
  ASSERT_EQ(refused.error().size(), 2U);
  EXPECT_THAT(in_words(refused.error()[0]), HasSubstr("line 2, column matrix_hv_lo"));
  EXPECT_THAT(in_words(refused.error()[0]),
              HasSubstr("matrix_hv_lo is 700 and matrix_hv 660: a number lies inside its own"));
  EXPECT_THAT(in_words(refused.error()[1]), HasSubstr("toughness_mpa_sqrt_m_hi"));
}

// Written out, the known media come back as they are.
TEST(ApexCatalogues, TakeMediaOfAFile) {
  std::string text = "name";
  for (const auto& constant : wear::medium_constants()) text += "," + std::string(constant.field);
  for (const wear::AbrasiveMedium& medium : wear::known_media()) {
    text += "\n" + medium.name;
    for (const auto& constant : wear::medium_constants()) {
      text += "," + std::to_string(constant.number_in(medium) * 1e3) + "e-3";
    }
  }
  const OwnFile file(text + "\n");

  const auto catalogue = apex_catalogue({.media = file.path()}).value();

  ASSERT_EQ(catalogue.own_media, 2U);
  for (std::size_t i = 0; i < 2; ++i) {
    for (const auto& constant : wear::medium_constants()) {
      EXPECT_NEAR(
          constant.number_in(catalogue.media[i]), constant.number_in(wear::known_media()[i]), 1e-6)
          << constant.field;
    }
  }
}

TEST(ApexCatalogues, RefuseEveryWrongCellOfAFile) {
  const OwnFile file("name,land_width_um,tooth_spacing_um\na,0.5,8\nb,-1,2\n");

  const auto catalogue = apex_catalogue({.finishes = file.path()});

  ASSERT_FALSE(catalogue);
  ASSERT_EQ(catalogue.error().size(), 2U);
  EXPECT_THAT(in_words(catalogue.error()[0]), HasSubstr("line 3, column land_width_um"));
  EXPECT_THAT(in_words(catalogue.error()[1]), HasSubstr("from 8 to 5000"));
}

TEST(ApexCatalogues, RefuseTwistedPatchesShorterThanASegment) {
  const std::string head =
      "name,abrasive_hv,groove_width_um,reference_wear_rate_mm3_per_newton_metre,"
      "twist_mean_line_load_newton_per_mm,twist_patch_length_mm\nours,1000,2,1e-7,1,";
  {
    const OwnFile file(head + "0.004\n");
    EXPECT_TRUE(apex_catalogue({.media = file.path()}));
  }
  for (const char* patch : {"1e-300", "1e-6"}) {
    const OwnFile file(head + patch + "\n");

    const auto catalogue = apex_catalogue({.media = file.path()});

    ASSERT_FALSE(catalogue) << patch;
    EXPECT_THAT(in_words(catalogue.error()[0]), HasSubstr("column twist_patch_length_mm"));
    EXPECT_THAT(in_words(catalogue.error()[0]), HasSubstr("from 0.004"));
  }
}

// What the simulator knows of a medium or a finish is what a table may say of it, no more, no less.
TEST(ApexCatalogues, HaveAColumnForEveryConstantAndAConstantForEveryColumn) {
  const auto names_of = [](const std::vector<exchange::NumberColumn>& columns) {
    std::vector<std::string> names;
    for (const auto& column : columns) names.push_back(column.name);
    return names;
  };
  const auto fields_of = [](const auto& constants) {
    std::vector<std::string> fields;
    for (const auto& constant : constants) fields.emplace_back(constant.field);
    return fields;
  };
  std::vector<std::string> of_steels = {"hardness_hrc"};
  for (const std::string& field : fields_of(materials::steel_constants())) {
    for (const char* part : {"", "_lo", "_hi"}) of_steels.push_back(field + part);
  }

  EXPECT_THAT(fields_of(wear::medium_constants()),
              ::testing::UnorderedElementsAreArray(names_of(medium_columns())));
  EXPECT_THAT(fields_of(wear::finish_constants()),
              ::testing::UnorderedElementsAreArray(names_of(finish_columns())));
  EXPECT_THAT(of_steels, ::testing::UnorderedElementsAreArray(names_of(steel_columns())));
}

TEST(ApexCatalogues, FindNamesInSmallAndCapitalLetters) {
  EXPECT_EQ(find_medium(known(), "New Sisal Matting")->name, "new sisal matting");
  EXPECT_EQ(find_finish(known(), " COARSE ")->name, "coarse");
  EXPECT_EQ(find_steel(known(), "aisi a11")->name, "AISI A11");
}

TEST(ApexCatalogues, AskWhetherANearNameWasMeant) {
  EXPECT_EQ(find_medium(known(), "new sisal mating").error().accepted,
            "did you mean new sisal matting");
  EXPECT_EQ(find_finish(known(), "coarce").error().accepted, "did you mean coarse");
  EXPECT_THAT(find_steel(known(), "X153CrMoV21").error().accepted, HasSubstr("X153CrMoV12"));
}

// In the table of steels, but what it is made of is not known.
TEST(ApexCatalogues, SayOfASteelWithoutARowThatItHasNone) {
  EXPECT_THAT(find_steel(known(), "AISI 420").error().sentence, HasSubstr("there is no row"));
}

// A file's names that differ in their letters alone stay two.
TEST(ApexCatalogues, PreferANameAsItIsWritten) {
  const OwnFile file("name,land_width_um\nhoned,0.3\nHoned,0.4\n");

  const auto catalogue = apex_catalogue({.finishes = file.path()}).value();

  EXPECT_EQ(find_finish(catalogue, "Honed")->finish.land_width_um, 0.4);
  EXPECT_EQ(find_finish(catalogue, "honed")->finish.land_width_um, 0.3);
}

TEST(WorkInWords, HasMediaAndPausesInTheirOrder) {
  const wear::WorkPlan plan =
      work("90 new sisal matting,  10 uplifted sisal matting , pause 8 h wet");

  EXPECT_EQ(plan.name, "90 new sisal matting, 10 uplifted sisal matting, pause 8 h wet");
  ASSERT_EQ(plan.steps.size(), 3U);
  EXPECT_EQ(plan.steps[0].cuts, 90);
  EXPECT_EQ(std::get<wear::AbrasiveMedium>(plan.steps[1].what), wear::known_media()[1]);
  const auto pause = std::get<wear::WetPause>(plan.steps[2].what);
  EXPECT_EQ(pause.duration_hour, 8);
  EXPECT_EQ(pause.land_growth_um_per_hour, wear::kWetLandGrowthUmPerHour);
}

TEST(WorkInWords, SaysHowFastAWetPauseCorrodes) {
  const auto growth = [](const std::string& pause) {
    return std::get<wear::WetPause>(work("1 new sisal matting, " + pause).steps[1].what)
        .land_growth_um_per_hour;
  };

  EXPECT_EQ(growth("pause 8 h"), 0);
  EXPECT_EQ(growth("pause 8 h dry"), 0);
  EXPECT_EQ(growth("pause 8 h wet at 0.02 um/h"), 0.02);
}

TEST(WorkInWords, IsRefusedWhereAPartIsNeitherCutsNorAPause) {
  EXPECT_THAT(refusal("new sisal matting"), HasSubstr("is no part of mixed work"));
  EXPECT_THAT(refusal("0 new sisal matting"), HasSubstr("is no part"));
  EXPECT_THAT(refusal("9 new sisal matting,"), HasSubstr("is no part"));
  EXPECT_THAT(refusal("9 new sisal matting, pause 8 days"), HasSubstr("pause 8 h wet"));
  EXPECT_THAT(refusal("9 rope"), HasSubstr("no medium is called “rope”"));
  EXPECT_THAT(refusal("pause 8 h"), HasSubstr("has no cut in it"));
}

}  // namespace
}  // namespace keenfall::workbench
