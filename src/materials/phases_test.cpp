#include "materials/phases.h"

#include "materials/spelling.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace keenfall::materials {
namespace {

using testing::HasSubstr;
using enum Scratching;

HardnessSpan span_of(std::string_view name) { return hardness_span(find_phase(name).value()); }

Scratching scratches_named(std::string_view hard, std::string_view soft) {
  return scratches(span_of(hard), span_of(soft));
}

// Foundry lexicon, scale of hardness: quartz 900 to 1280, feldspar 600 to 750, apatite 540.
TEST(Phases, HoldTheMineralsOfTheScaleThatWasRead) {
  EXPECT_EQ(find_phase("quartz").value().lo_hv, 900);
  EXPECT_EQ(find_phase("quartz").value().hi_hv, 1280);
  EXPECT_EQ(find_phase("feldspar").value().hi_hv, 750);
  EXPECT_EQ(find_phase("apatite").value().lo_hv, 540);
}

// PMC8763544, Table 2: VC 2763, NbC 1999, TiC 3569 (kg/mm2), within a tenth of the ranges here.
TEST(Phases, AgreeWithAReviewOfCarbidesWithinATenth) {
  const auto expect_near = [](std::string_view name, double read_hv) {
    const HardnessSpan span = span_of(name);
    EXPECT_GE(read_hv, 0.9 * span.lo_hv) << name;
    EXPECT_LE(read_hv, 1.1 * span.hi_hv) << name;
  };
  expect_near("VC", 2763);
  expect_near("NbC", 1999);
  expect_near("TiC", 3569);
  expect_near("SiC", 2600);
}

// Mohs's order, which is two centuries old.
TEST(Phases, StandInTheOrderOfMohs) {
  const std::vector<std::string_view> mohs = {"gypsum",
                                              "calcite",
                                              "fluorite",
                                              "apatite",
                                              "feldspar",
                                              "quartz",
                                              "topaz",
                                              "corundum",
                                              "diamond"};
  for (std::size_t i = 1; i < mohs.size(); ++i) {
    EXPECT_LT(span_of(mohs[i - 1]).hi_hv, span_of(mohs[i]).hi_hv) << mohs[i];
  }
}

TEST(Phases, RunFromSoftToHard) {
  const auto rows = known_phases();
  for (std::size_t i = 1; i < rows.size(); ++i) {
    EXPECT_LE(rows[i - 1].lo_hv + rows[i - 1].hi_hv, rows[i].lo_hv + rows[i].hi_hv);
  }
}

TEST(Phases, NameAKnownSourceAndARangeThatRises) {
  for (const Phase& phase : known_phases()) {
    const Source* source = find_source(phase.from.source_key);
    ASSERT_NE(source, nullptr) << phase.name;
    EXPECT_EQ(phase.from.mark == TrustMark::from_memory, source->address.empty()) << phase.name;
    EXPECT_GT(phase.lo_hv, 0) << phase.name;
    EXPECT_LE(phase.lo_hv, phase.hi_hv) << phase.name;
  }
}

TEST(Phases, ShareNoName) {
  std::set<std::string> seen;
  for (const Phase& phase : known_phases()) {
    EXPECT_TRUE(seen.insert(folded(phase.name)).second) << phase.name;
    for (const auto other : phase.same) EXPECT_TRUE(seen.insert(folded(other)).second) << other;
  }
}

TEST(Phases, AreFoundHoweverTheyAreWritten) {
  EXPECT_EQ(find_phase(" m7c3 ").value().name, "M7C3");
  EXPECT_EQ(find_phase("vanadium carbide").value().name, "MC");
  EXPECT_EQ(find_phase("SAND").value().name, "quartz");
  EXPECT_EQ(find_phase("cubic-boron nitride").value().name, "CBN");
}

TEST(Phases, ThatAreMisspelledAreAnsweredWithTheNearest) {
  const auto wrong = find_phase("quarts");

  ASSERT_FALSE(wrong.has_value());
  EXPECT_EQ(wrong.error().kind, base::ProblemKind::unknown_name);
  EXPECT_EQ(wrong.error().accepted, "did you mean quartz");
}

TEST(Phases, NobodyKnowsAreRefused) {
  for (const char* unknown : {"", "  ", "moon dust"}) {
    const auto found = find_phase(unknown);
    ASSERT_FALSE(found.has_value()) << unknown;
    EXPECT_THAT(found.error().accepted, HasSubstr("keenfall phases"));
  }
}

// The 1.2 rule with figures worked by hand: 1200 just scratches 1000, 1199 does not.
TEST(Scratching, TakesAFifthMoreHardness) {
  EXPECT_EQ(scratches({1200, 1200}, {1000, 1000}), yes);
  EXPECT_EQ(scratches({1199, 1199}, {1000, 1000}), no);
  EXPECT_EQ(scratches({1100, 1300}, {1000, 1000}), in_part);
  EXPECT_EQ(scratches({1000, 1000}, {1000, 1000}), no);
}

// Follows from the rule and the ranges: fused alumina cuts a matrix of 746 HV or less but not MC;
// diamond and CBN cut both; calcite cuts no hardened steel; quartz cuts a matrix of 697 HV.
TEST(Scratching, IsWhyAStoneOfAluminaGoesDullOnVanadiumCarbide) {
  EXPECT_EQ(scratches(span_of("fused alumina"), {640, 746}), yes);
  EXPECT_EQ(scratches_named("fused alumina", "MC"), no);
  EXPECT_EQ(scratches_named("silicon carbide", "MC"), in_part);
  EXPECT_EQ(scratches_named("CBN", "MC"), yes);
  EXPECT_EQ(scratches_named("diamond", "MC"), yes);
  EXPECT_EQ(scratches_named("calcite", "M3C"), no);
  EXPECT_EQ(scratches(span_of("quartz"), {697, 697}), yes);
}

}  // namespace
}  // namespace keenfall::materials
