#include "workbench/stone_catalogue.h"

#include "workbench/own_file_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::workbench {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using testing_files::OwnFile;

sharpening::Stone own_stone(const std::string& text) {
  const OwnFile file(text);
  return stone_catalogue(file.path()).value().stones.front();
}

TEST(StoneCatalogues, HoldTheKnownStonesWithoutAFile) {
  const StoneCatalogue catalogue = stone_catalogue("").value();

  EXPECT_EQ(catalogue.own, 0U);
  EXPECT_EQ(catalogue.stones.size(), sharpening::known_stones().size());
  EXPECT_EQ(find_stone(catalogue, "Alumina")->name, "fused alumina");
}

TEST(StoneCatalogues, TakeStonesOfAFileWithTheirRanges) {
  const sharpening::Stone stone = own_stone(
      "name,grain_um,abrasive_hv,abrasive_hv_lo,abrasive_hv_hi,groove_width_um,"
      "cutting_power_ratio,cutting_power_ratio_hi,blunt_share_fraction\n"
      "hard one,25,2000,1800,2100,2.5,1.2,1.6,0.4\n");

  EXPECT_EQ(stone.name, "hard one");
  EXPECT_EQ(stone.grit, "25 µm");
  EXPECT_EQ(stone.abrasive_hv.lo, 1800);
  EXPECT_EQ(stone.abrasive_hv.hi, 2100);
  EXPECT_TRUE(stone.groove_width_um.is_known());
  EXPECT_EQ(stone.cutting_power_ratio.lo, 1.2);
  EXPECT_EQ(stone.cutting_power_ratio.hi, 1.6);
  EXPECT_EQ(stone.blunt_share_fraction.from.mark, materials::TrustMark::declared);
}

TEST(StoneCatalogues, HoldOneStoneOfANameAndItIsTheFiles) {
  const OwnFile file("name,abrasive_hv\nDiamond,9000\nfused alumina,1900\n");

  const StoneCatalogue catalogue = stone_catalogue(file.path()).value();

  EXPECT_EQ(catalogue.stones.size(), sharpening::known_stones().size());
  EXPECT_EQ(find_stone(catalogue, "diamond")->abrasive_hv.typical, 9000);
  EXPECT_EQ(find_stone(catalogue, "alumina")->abrasive_hv.typical, 1900);
  EXPECT_THAT(catalogue.in_place_of_known, ElementsAre("stone fused alumina", "stone diamond"));
}

TEST(StoneCatalogues, GuessWidelyWhatIsNotSaid) {
  const sharpening::Stone stone = own_stone("name,abrasive_hv\nmine,2100\n");
  const sharpening::Stone of_grain = own_stone("name,abrasive_hv,grain_um\nmine,2100,14\n");

  EXPECT_EQ(stone.grit, "");
  for (const sharpening::Estimate& each :
       {stone.groove_width_um, stone.cutting_power_ratio, stone.blunt_share_fraction}) {
    EXPECT_GE(each.hi / each.lo, 4);
    EXPECT_EQ(each.from.mark, materials::TrustMark::guessed);
  }
  // A tenth to a twentieth of the grain.
  EXPECT_DOUBLE_EQ(of_grain.groove_width_um.lo, 0.7);
  EXPECT_DOUBLE_EQ(of_grain.groove_width_um.hi, 1.4);
}

TEST(StoneCatalogues, PutNamesOfTheFileBeforeThoseKnown) {
  const OwnFile file("name,abrasive_hv\nfused alumina,1900\n");
  const StoneCatalogue catalogue = stone_catalogue(file.path()).value();

  EXPECT_EQ(catalogue.own, 1U);
  EXPECT_EQ(find_stone(catalogue, "fused alumina")->abrasive_hv.typical, 1900);
  EXPECT_EQ(find_stone(catalogue, "cheese").error().accepted,
            "fused alumina, silicon carbide, CBN, diamond");
}

TEST(StoneCatalogues, AreRefusedWithEveryWrongCell) {
  const auto refusals = [](const std::string& text) {
    const OwnFile file(text);
    std::vector<std::string> words;
    const auto refused = stone_catalogue(file.path());
    for (const auto& problem : refused.error()) {
      words.push_back(in_words(problem));
    }
    return words;
  };

  EXPECT_THAT(refusals("name,abrasive_hv,blunt_share_fraction\na,soft,2\nb,,0.5\n"),
              ElementsAre(HasSubstr("line 2, column abrasive_hv"),
                          HasSubstr("line 2, column blunt_share_fraction"),
                          HasSubstr("line 3, column abrasive_hv")));
  EXPECT_THAT(
      refusals("name,abrasive_hv,abrasive_hv_lo,groove_width_um_hi\na,2000,2100,\nb,2000,,5\n"),
      ElementsAre(HasSubstr("line 2, column abrasive_hv_lo"),
                  AllOf(HasSubstr("line 3, column groove_width_um"),
                        HasSubstr("a range of groove_width_um and no usual figure"))));
}

}  // namespace
}  // namespace keenfall::workbench
