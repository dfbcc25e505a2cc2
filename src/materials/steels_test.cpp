#include "materials/steels.h"

#include "materials/spelling.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace keenfall::materials {
namespace {

using testing::HasSubstr;
using enum Element;

Steel steel(std::string_view name) { return find_steel(name).value().steel; }

Content content(std::string_view name, Element element) {
  for (const Content& each : steel(name).composition) {
    if (each.element == element) return each;
  }
  return {};
}

// Llewellyn and Hudd, Steels, 3rd ed., table of EN 10088 analyses.
TEST(Steels, HoldTheHandbookLimitsOfX90CrMoV18) {
  EXPECT_EQ(content("X90CrMoV18", C), (Content{C, 0.85, 0.95}));
  EXPECT_EQ(content("X90CrMoV18", Cr), (Content{Cr, 17, 19}));
  EXPECT_EQ(content("X90CrMoV18", Mo), (Content{Mo, 0.90, 1.30}));
  EXPECT_EQ(content("X90CrMoV18", V), (Content{V, 0.07, 0.12}));
  EXPECT_EQ(steel("X90CrMoV18").composition_from.mark, TrustMark::seen);
}

// ASTM A576-90b, table of limits: 1084 and 1095.
TEST(Steels, HoldTheStandardLimitsOfPlainCarbonSteels) {
  EXPECT_EQ(content("1084", C), (Content{C, 0.80, 0.93}));
  EXPECT_EQ(content("1084", Mn), (Content{Mn, 0.60, 0.90}));
  EXPECT_EQ(content("1095", C), (Content{C, 0.90, 1.03}));
  EXPECT_EQ(content("1095", Mn), (Content{Mn, 0.30, 0.50}));
}

// EN 10132-4 as reprinted on a page about C75S.
TEST(Steels, HoldTheReprintedLimitsOfC75S) {
  EXPECT_EQ(content("C75S", C), (Content{C, 0.70, 0.80}));
  EXPECT_EQ(content("C75S", Cr), (Content{Cr, std::nullopt, 0.40}));
}

// AZoM article 6138 misprints the chromium of M2 as 0.20-0.45, which is its silicon; 3.75-4.50
// holds.
TEST(Steels, CorrectTheMisprintedChromiumOfM2) {
  EXPECT_EQ(content("AISI M2", Cr), (Content{Cr, 3.75, 4.50}));
}

TEST(Steels, NumberAtLeastTwentyWithTheThreeOfTheDemo) {
  EXPECT_GE(known_steels().size(), 20U);
  EXPECT_EQ(steel("1.1248").name, "C75S");
  EXPECT_EQ(steel("1.4112").name, "X90CrMoV18");
  EXPECT_EQ(steel("1.2379").name, "X153CrMoV12");
}

TEST(Steels, HaveAKnownSourceForEveryFact) {
  for (const Steel& each : known_steels()) {
    EXPECT_NE(find_source(each.composition_from.source_key), nullptr) << each.name;
    if (each.working_hardness) {
      EXPECT_NE(find_source(each.working_hardness->from.source_key), nullptr) << each.name;
    }
    if (!each.carbides.empty()) {
      EXPECT_NE(find_source(each.carbides_from.source_key), nullptr) << each.name;
    }
  }
}

TEST(Steels, AreMarkedSeenOnlyWhereSomethingWasRead) {
  for (const Source& source : known_sources()) {
    const bool read = !source.address.empty();
    for (const Steel& each : known_steels()) {
      if (each.composition_from.source_key == source.key) {
        EXPECT_EQ(each.composition_from.mark == TrustMark::seen, read) << each.name;
      }
    }
  }
}

TEST(Steels, HaveRangesThatRise) {
  for (const Steel& each : known_steels()) {
    ASSERT_FALSE(each.composition.empty()) << each.name;
    EXPECT_EQ(each.composition.front().element, C) << each.name;
    for (const Content& part : each.composition) {
      EXPECT_TRUE(part.lo_percent || part.hi_percent) << each.name;
      EXPECT_LE(part.lo_percent.value_or(0), part.hi_percent.value_or(100)) << each.name;
    }
    if (each.working_hardness) {
      EXPECT_LT(each.working_hardness->lo_hrc, each.working_hardness->hi_hrc) << each.name;
    }
    for (const CarbideShare& share : each.carbides) {
      EXPECT_LE(share.lo_percent, share.hi_percent) << each.name;
    }
  }
}

TEST(Steels, ShareNoDesignation) {
  std::set<std::string> seen;
  for (const Steel& each : known_steels()) {
    EXPECT_TRUE(seen.insert(folded(each.name)).second) << each.name;
    for (const auto name : each.same) EXPECT_TRUE(seen.insert(folded(name)).second) << name;
  }
}

TEST(Steels, AreFoundHoweverTheyAreWritten) {
  for (const char* written : {"X153CrMoV12",
                              "x153crmov12",
                              " X 153 CrMoV 12 ",
                              "1.2379",
                              "EN 1.2379",
                              "W.-Nr. 1.2379",
                              "X153CrMoV12 (EN 1.2379)",
                              "X153CrMoV12 / 1.2379"}) {
    const auto found = find_steel(written);
    ASSERT_TRUE(found.has_value()) << written;
    EXPECT_EQ(found->steel.name, "X153CrMoV12") << written;
    EXPECT_FALSE(found->only_near) << written;
  }
  for (const char* written : {"D2", "AISI D2", "aisi-d2", "T30402", "UNS T30402"}) {
    EXPECT_EQ(steel(written).name, "AISI D2") << written;
  }
  EXPECT_EQ(steel("AISI 1095").name, "SAE 1095");
}

TEST(Steels, OfAnotherStandardAreFoundAsNearAndSaidToBeSo) {
  const auto found = find_steel("1.2510");

  ASSERT_TRUE(found.has_value());
  EXPECT_EQ(found->steel.name, "AISI O1");
  EXPECT_TRUE(found->only_near);
}

TEST(Steels, ThatAreNearMayStandTogetherButStrangersMayNot) {
  EXPECT_TRUE(find_steel("D2 / 1.2379").has_value());
  const auto strangers = find_steel("D2 (1.4112)");
  ASSERT_FALSE(strangers.has_value());
  EXPECT_EQ(strangers.error().kind, base::ProblemKind::conflicting);
  EXPECT_EQ(strangers.error().sentence, "“D2 (1.4112)” names two steels, AISI D2 and X90CrMoV18");
}

TEST(Steels, ThatAreMisspelledAreAnsweredWithTheNearest) {
  const auto wrong = find_steel("X90CrMoV81");

  ASSERT_FALSE(wrong.has_value());
  EXPECT_EQ(wrong.error().kind, base::ProblemKind::unknown_name);
  EXPECT_THAT(wrong.error().accepted, HasSubstr("did you mean X90CrMoV18"));
}

TEST(Steels, NobodyKnowsAreRefusedWithTheRuleOfTheTable) {
  for (const char* unknown : {"", "   ", "EN", "()", "unobtainium", "wonder steel 9000"}) {
    const auto found = find_steel(unknown);
    ASSERT_FALSE(found.has_value()) << unknown;
    EXPECT_THAT(found.error().sentence, HasSubstr("knows no trade names"));
  }
  EXPECT_FALSE(find_steel(std::string(100000, 'x')).has_value());
}

}  // namespace
}  // namespace keenfall::materials
