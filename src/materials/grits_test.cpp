#include "materials/grits.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>

namespace keenfall::materials {
namespace {

using testing::HasSubstr;

Grit grit_of(GritSystem system, double number) { return {.system = system, .number = number}; }

double um(std::string_view text) { return to_micrometres(parse_grit(text)).value(); }

// JIS R 6001:1987 as reprinted (source key jis-r6001-1987), electrical resistance method.
TEST(Grits, OfJisHaveTheMediansOfTheStandard) {
  EXPECT_DOUBLE_EQ(um("JIS 240"), 57.0);
  EXPECT_DOUBLE_EQ(um("JIS 1000"), 11.5);
  EXPECT_DOUBLE_EQ(um("JIS 8000"), 1.2);
  EXPECT_DOUBLE_EQ(find_grit(parse_grit("JIS 2000"))->tolerance_um.value(), 0.6);
}

// FEPA-P: sizes.com for P12 to P120, a 2008 list of ISO/FEPA designations for the rest.
TEST(Grits, OfPaperHaveThePublishedMedians) {
  EXPECT_DOUBLE_EQ(um("P80"), 201);
  EXPECT_DOUBLE_EQ(um("P240"), 58.5);
  EXPECT_DOUBLE_EQ(um("P1000"), 18.3);
  EXPECT_DOUBLE_EQ(um("P2500"), 8.4);
}

// A second page (ruddwoodfinishes.com) prints FEPA-P rounded to whole micrometres.
TEST(Grits, OfPaperAgreeWithASecondPageWithinItsRounding) {
  const std::map<double, double> rounded = {{150, 100},
                                            {220, 68},
                                            {360, 40},
                                            {400, 35},
                                            {500, 30},
                                            {600, 26},
                                            {800, 22},
                                            {1000, 18},
                                            {1200, 15},
                                            {1500, 13},
                                            {2000, 10},
                                            {2500, 8}};
  for (const auto& [number, size_um] : rounded) {
    EXPECT_NEAR(to_micrometres(grit_of(GritSystem::fepa_p, number)).value(), size_um, 0.51)
        << number;
  }
}

// FEPA-F microgrits from memory (FEPA 42, ISO 8486-2); F230 also lies inside the 50 to 56 um that
// sizes.com quotes for F220/F230.
TEST(Grits, OfStonesHaveTheRecalledMediansAndSaySo) {
  EXPECT_DOUBLE_EQ(um("F1000"), 4.5);
  EXPECT_DOUBLE_EQ(um("F230"), 53);
  EXPECT_EQ(find_grit(parse_grit("F1000"))->from.mark, TrustMark::from_memory);
}

// FEPA 42-D-1986: 80 % of F220 lies between 53 and 75 um; its geometric middle is 63 um.
TEST(Grits, OfCoarseStonesAreTheMiddleOfTheirBandAndMarkedDerived) {
  EXPECT_DOUBLE_EQ(um("F220"), 63);
  EXPECT_EQ(find_grit(parse_grit("F220"))->from.mark, TrustMark::derived);
}

// sizes.com: CAMI 600 is 16.0 um and CAMI 400 is 23.6 um, where P600 is 25.8 and P400 is 35.
TEST(Grits, OfTheAmericanPaperSystemAreFinerThanTheSameEuropeanNumber) {
  EXPECT_DOUBLE_EQ(um("CAMI 600"), 16.0);
  EXPECT_DOUBLE_EQ(um("ANSI 400"), 23.6);
  EXPECT_LT(um("CAMI 600"), um("P600"));
}

TEST(Grits, GetFinerAsTheirNumberGrowsInEverySystem) {
  const auto rows = known_grits();
  for (std::size_t i = 1; i < rows.size(); ++i) {
    if (rows[i].system != rows[i - 1].system) continue;
    EXPECT_GT(rows[i].number, rows[i - 1].number);
    EXPECT_LT(rows[i].median_um, rows[i - 1].median_um) << rows[i].number;
  }
}

TEST(Grits, HaveAKnownSourceInEveryRow) {
  for (const GritRow& row : known_grits()) {
    EXPECT_NE(find_source(row.from.source_key), nullptr) << row.from.source_key;
  }
}

struct Written {
  const char* text;
  GritSystem system;
  double number;
};

class WrittenGrits : public testing::TestWithParam<Written> {};

TEST_P(WrittenGrits, AreUnderstood) {
  const Grit grit = parse_grit(GetParam().text);

  EXPECT_EQ(grit.system, GetParam().system) << GetParam().text;
  EXPECT_EQ(grit.number, GetParam().number) << GetParam().text;
  EXPECT_EQ(grit.as_written, GetParam().text);
}

INSTANTIATE_TEST_SUITE_P(Spellings,
                         WrittenGrits,
                         testing::Values(Written{"F1000", GritSystem::fepa_f, 1000},
                                         Written{"f 1000", GritSystem::fepa_f, 1000},
                                         Written{"FEPA-F 1000", GritSystem::fepa_f, 1000},
                                         Written{"FEPA F-1000", GritSystem::fepa_f, 1000},
                                         Written{"1000 FEPA-F", GritSystem::fepa_f, 1000},
                                         Written{"fused alumina F220", GritSystem::fepa_f, 220},
                                         Written{"P1000", GritSystem::fepa_p, 1000},
                                         Written{"FEPA P 400 paper", GritSystem::fepa_p, 400},
                                         Written{"JIS 1000", GritSystem::jis, 1000},
                                         Written{"jis#1000", GritSystem::jis, 1000},
                                         Written{"water stone, 1000 JIS", GritSystem::jis, 1000},
                                         Written{"1000 grit JIS", GritSystem::jis, 1000},
                                         Written{"CAMI 600", GritSystem::cami, 600},
                                         Written{"9 um", GritSystem::micrometres, 9},
                                         Written{"9 \u00b5m", GritSystem::micrometres, 9},
                                         Written{"9\u03bcm", GritSystem::micrometres, 9},
                                         Written{"9 micron diamond", GritSystem::micrometres, 9},
                                         Written{"0,5 um", GritSystem::micrometres, 0.5},
                                         Written{
                                             "45 um diamond plate", GritSystem::micrometres, 45}));

TEST(Grits, StayUnknownAndAsWrittenWhenTheSystemIsNotSaid) {
  for (const char* text : {"1000",
                           "#1000",
                           "fused alumina 220",
                           "fine",
                           "hard white stone",
                           "",
                           "1000 grit",
                           "1000 F",
                           "1-3 um",
                           "1\u20133 um",
                           "1000/6000",
                           "P1000 or JIS 1000",
                           "F0",
                           "xyz"}) {
    EXPECT_EQ(parse_grit(text).system, GritSystem::unknown) << text;
    EXPECT_EQ(parse_grit(text).as_written, text);
  }
}

TEST(Grits, OfUnknownSystemAreNeverTurnedIntoMicrometres) {
  const auto size = to_micrometres(parse_grit("#1000"));

  ASSERT_FALSE(size.has_value());
  EXPECT_EQ(size.error().sentence,
            "“#1000” does not say in which system it is a grit, so its size in µm is not known; it "
            "could be 4.5 µm (FEPA-F), 18.3 µm (FEPA-P), 11.5 µm (JIS), 10.3 µm (CAMI)");
}

TEST(Grits, ThatNoTableHoldsAreRefusedByName) {
  const auto size = to_micrometres(parse_grit("F1001"));

  ASSERT_FALSE(size.has_value());
  EXPECT_THAT(size.error().sentence, HasSubstr("grit 1001 of FEPA-F is not in the table"));
}

TEST(Grits, WithABareNumberCouldBeOneSizePerSystem) {
  std::map<GritSystem, double> sizes;
  for (const GritRow& row : possible_sizes_um(1000)) sizes[row.system] = row.median_um;

  EXPECT_DOUBLE_EQ(sizes.at(GritSystem::fepa_f), 4.5);
  EXPECT_DOUBLE_EQ(sizes.at(GritSystem::fepa_p), 18.3);
  EXPECT_DOUBLE_EQ(sizes.at(GritSystem::jis), 11.5);
  EXPECT_TRUE(possible_sizes_um(1234).empty());
}

TEST(Grits, AreFoundInAnotherSystemByTheNearestRatio) {
  const auto nearest = nearest_in_system(4.5, GritSystem::jis);

  // 4.0 um is nearer by ratio (1.125) than 5.5 um (1.222).
  ASSERT_TRUE(nearest.has_value());
  EXPECT_EQ(nearest->grit.number, 3000);
  EXPECT_DOUBLE_EQ(nearest->median_um, 4.0);
  EXPECT_DOUBLE_EQ(nearest->ratio, 4.0 / 4.5);
}

TEST(Grits, AreTheirOwnNearestNeighbour) {
  for (const GritRow& row : known_grits()) {
    EXPECT_EQ(nearest_in_system(row.median_um, row.system).value().grit.number, row.number);
  }
}

TEST(Grits, FarBeyondASystemsEndsHaveNoNeighbourInIt) {
  const auto too_fine = nearest_in_system(0.1, GritSystem::jis);

  ASSERT_FALSE(too_fine.has_value());
  EXPECT_EQ(too_fine.error().sentence,
            "0.1 µm is beyond the grits of JIS; its last is 8000 with 1.2 µm");
  EXPECT_FALSE(nearest_in_system(0, GritSystem::jis).has_value());
  EXPECT_FALSE(nearest_in_system(9, GritSystem::unknown).has_value());
}

TEST(Grits, OfUnknownSystemAreNeverMatchedEvenToThemselves) {
  for (const char* unknown : {"1000", "#1000", "fine", ""}) {
    for (const char* other : {"1000", "#1000", "fine", "", "F1000", "11.5 um"}) {
      EXPECT_EQ(same_finish_size(parse_grit(unknown), parse_grit(other)), SameFinish::cannot_say);
      EXPECT_EQ(same_finish_size(parse_grit(other), parse_grit(unknown)), SameFinish::cannot_say);
    }
  }
}

TEST(Grits, OfOneSystemMatchOnlyWithTheSameNumber) {
  EXPECT_EQ(same_finish_size(parse_grit("P240"), parse_grit("FEPA-P 240")), SameFinish::matched);
  EXPECT_EQ(same_finish_size(parse_grit("P240"), parse_grit("P280")), SameFinish::differs);
}

TEST(Grits, OfTwoSystemsMatchByMedianNotByNumber) {
  EXPECT_EQ(same_finish_size(parse_grit("F1000"), parse_grit("P1000")), SameFinish::differs);
  EXPECT_EQ(same_finish_size(parse_grit("P1000"), parse_grit("JIS 700")), SameFinish::matched);
  EXPECT_EQ(same_finish_size(parse_grit("9.3 um"), parse_grit("F600")), SameFinish::matched);
}

TEST(Grits, AreSaidWithTheirSystem) {
  EXPECT_EQ(in_words(parse_grit("f1000")), "FEPA-F 1000");
  EXPECT_EQ(in_words(parse_grit("9 micron diamond")), "9 µm");
  EXPECT_EQ(in_words(parse_grit("fine")), "fine");
}

}  // namespace
}  // namespace keenfall::materials
