#include "telling/across_media_words.h"

#include "telling/said_test.h"
#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::telling {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using testing::said;
using verdicts::testing::around;
using verdicts::testing::made_judgement;

TEST(AcrossMediaWords, SaysThatTheGapClosesAndTheChanceOfOneOrder) {
  const std::string text = said(across_media_sentences(made_judgement()));

  EXPECT_THAT(
      text,
      HasSubstr("The gap between the blades closes on uplifted matting, to 17 % of that on new "
                "matting (95 % interval "));
  EXPECT_THAT(text,
              HasSubstr("The chance that the 3 blades stand in one order on new matting and on "
                        "uplifted matting is 41 %."));
}

TEST(AcrossMediaWords, SaysNotSettledWhereTheGapMayBeAsWide) {
  verdicts::Judgement judgement = made_judgement();
  judgement.media->pairs[0].spread_ratio = around(1.3, 0.6);

  EXPECT_THAT(said(across_media_sentences(judgement)),
              HasSubstr("Whether the gap between the blades is narrower on new matting than on "
                        "uplifted matting is not settled: it comes to 77 % of that there "
                        "(95 % interval "));
}

TEST(AcrossMediaWords, SpeaksOfTheAdvantageWhereThereAreTwoBlades) {
  verdicts::Judgement judgement = made_judgement();
  for (verdicts::MediumOfTable& medium : judgement.media->media)
    medium.arms.erase(medium.arms.begin() + 1);
  judgement.media->interactions[0].a = 1;

  const std::string text = said(across_media_sentences(judgement));
  EXPECT_THAT(text,
              HasSubstr("C against A: the ratio on new matting is 2.9 times that on uplifted "
                        "matting"));
  EXPECT_THAT(text, Not(HasSubstr("gap")));
}

TEST(AcrossMediaWords, SaysHowManyTimesAsLongWhereAnEdgeLastsLonger) {
  verdicts::Judgement judgement = made_judgement();
  judgement.media->pairs[0].lasting_ratio = around(0.25, 0.1);
  EXPECT_THAT(said(across_media_section(judgement)),
              HasSubstr("On new matting an edge lasts 4.0 times as many cuts as on uplifted"));

  judgement.media->pairs[0].lasting_ratio = around(4, 0.1);
  EXPECT_THAT(said(across_media_section(judgement)),
              HasSubstr("On uplifted matting an edge lasts 4.0 times as many cuts as on new"));
}

TEST(AcrossMediaWords, ListsTheOrdersInTheSection) {
  EXPECT_THAT(said(across_media_section(made_judgement())),
              HasSubstr("Most probable order on uplifted matting: C, B, A (chance 42 %)."));
}

TEST(AcrossMediaWords, IsEmptyForOneMedium) {
  verdicts::Judgement judgement = made_judgement();
  judgement.media.reset();

  EXPECT_THAT(across_media_sentences(judgement), IsEmpty());
  EXPECT_EQ(across_media_section(judgement), std::nullopt);
}

// Twenty blades' advantages in two media, every other one settled.
verdicts::Judgement with_many_interactions() {
  verdicts::Judgement judgement = made_judgement();
  const verdicts::MediaInteraction settled = judgement.media->interactions.front();
  verdicts::MediaInteraction open = settled;
  open.verdict = verdicts::Verdict::not_settled;
  judgement.media->interactions.clear();
  for (int i = 0; i < 20; ++i) judgement.media->interactions.push_back(i % 2 == 0 ? settled : open);
  return judgement;
}

TEST(AcrossMediaWords, CountTheAdvantagesThatAreOpenWhereThereAreMany) {
  const std::optional<Section> section = across_media_section(with_many_interactions());

  EXPECT_THAT(said(section),
              HasSubstr("Whether the ratio of two blades depends on the medium is not settled for "
                        "10 of 20 pairs.\n"));
  EXPECT_EQ(std::ranges::count(section->items, "all", &Sentence::left_out), 1);
}

TEST(AcrossMediaWords, SayHowManySettledAdvantagesThereAreWhereNoneIsOpen) {
  verdicts::Judgement judgement = with_many_interactions();
  for (auto& interaction : judgement.media->interactions) {
    interaction.verdict = verdicts::Verdict::longer;
  }
  EXPECT_THAT(said(across_media_section(judgement)),
              HasSubstr("All 20 pairs are settled; 12 of them stand here.\n"));

  judgement.media->interactions.resize(10);
  EXPECT_THAT(said(across_media_section(judgement)),
              AllOf(Not(HasSubstr("pairs")), Not(HasSubstr(" 0 of "))));
}

TEST(AcrossMediaWords, GiveTheWordsThatAreNotSettledTheirTone) {
  verdicts::Judgement judgement = made_judgement();
  judgement.media->pairs[0].spread_ratio = around(1.3, 0.6);

  EXPECT_EQ(across_media_sentences(judgement).front().words[1],
            (Words{"not settled", Tone::not_settled}));
}

// So many blades, A on, in so many media, M1 on; every pair of media with a gap nearly as wide.
verdicts::Judgement crossed(std::size_t blades, std::size_t media) {
  verdicts::Judgement judgement = made_judgement();
  judgement.comparisons.clear();
  judgement.arms.clear();
  judgement.media->media.clear();
  judgement.media->pairs.clear();
  judgement.media->interactions.clear();
  for (std::size_t m = 0; m < media; ++m) {
    verdicts::MediumOfTable medium;
    for (std::size_t b = 0; b < blades; ++b) {
      medium.arms.push_back(judgement.arms.size());
      medium.order.push_back(b);
      judgement.arms.push_back(verdicts::testing::made_arm(
          std::string(1, static_cast<char>('A' + b)), "M" + std::to_string(m + 1), 40));
    }
    judgement.media->media.push_back(medium);
    for (std::size_t other = 0; other < m; ++other) {
      judgement.media->pairs.push_back({.first = other,
                                        .second = m,
                                        .lasting_ratio = around(2, 0.1),
                                        .spread_ratio = around(0.9, 0.3)});
    }
  }
  return judgement;
}

TEST(AcrossMediaWords, OfManyMediaTellTheGapThatChangesMostAndHowOrdersAgree) {
  verdicts::Judgement judgement = crossed(3, 4);
  auto& pairs = judgement.media->pairs;
  const auto widest = std::ranges::find_if(
      pairs, [](const auto& pair) { return pair.first == 1 && pair.second == 3; });
  widest->spread_ratio = around(5, 0.1);
  judgement.media->agreement = {.kendall_w = 0.8, .p = 0.0213, .exact = false};

  EXPECT_EQ(said(across_media_sentences(judgement)),
            "The gap between the blades closes on M2, to 20 % of that on M4 (95 % interval 18 to "
            "22 %; gaps are in logs of cuts).\n"
            "Over all 4 media the orders of the medians agree by Kendall's W 0.80 (0 none, 1 "
            "wholly); orders by chance agree so well with probability 0.021, by random orders.\n");
  EXPECT_THAT(said(across_media_section(judgement)), Not(HasSubstr("an edge lasts")));
}

TEST(AcrossMediaWords, OfThreeMediaTellEachPairAndTheirAgreementInTheSection) {
  verdicts::Judgement judgement = crossed(3, 3);
  judgement.media->agreement = {.kendall_w = 1, .p = 0.028};

  const std::string text = said(across_media_section(judgement));

  EXPECT_THAT(text, HasSubstr("On M2 an edge lasts 2.0 times as many cuts as on M1"));
  EXPECT_THAT(text, HasSubstr("On M3 an edge lasts 2.0 times as many cuts as on M2"));
  EXPECT_THAT(text, HasSubstr("agree so well with probability 0.028.\n"));
  EXPECT_THAT(said(across_media_section(crossed(3, 2))), Not(HasSubstr("Kendall")));
}

TEST(AcrossMediaWords, ListNoOrderOfMoreBladesThanOneReads) {
  EXPECT_THAT(said(across_media_section(crossed(8, 2))), HasSubstr("Most probable order on M2"));
  EXPECT_THAT(said(across_media_section(crossed(9, 2))), Not(HasSubstr("Most probable order")));
}

TEST(AcrossMediaWords, LeaveTheAdvantageOfTwoBladesToTheAnswers) {
  verdicts::Judgement judgement = crossed(2, 2);
  judgement.media->interactions = {made_judgement().media->interactions.front()};
  judgement.media->interactions[0].a = 1;

  EXPECT_THAT(said(across_media_sentences(judgement)), HasSubstr("B against A: the ratio on M1"));
  EXPECT_THAT(said(across_media_section(judgement)), Not(HasSubstr("against")));
}

TEST(AcrossMediaWords, SpeakOfEdgesWhereOneBladeHasSeveral) {
  verdicts::Judgement judgement = crossed(3, 2);
  for (const std::size_t arm : {1U, 4U}) {
    judgement.arms[arm].arm.blade = "A";
    judgement.arms[arm].arm.edge.bevel_angle = trials::PerSideAngle{12};
  }

  const std::string text = said(across_media_sentences(judgement));

  EXPECT_THAT(text, HasSubstr("he gap between the edges"));
  EXPECT_THAT(text, HasSubstr("The chance that the 3 edges stand in one order on M1 and on M2"));
}

TEST(AcrossMediaWords, CountTheArmsWithoutAPartnerAndKeepTheRemarks) {
  verdicts::Judgement judgement = made_judgement();
  judgement.media->arms_left_out = {4};
  judgement.media->remarks = {"The media were cut on different days."};
  EXPECT_EQ(said(across_media_section(judgement)->remarks),
            "1 of the arms has no partner in every medium; it is left out here.\n"
            "The media were cut on different days.\n");

  judgement.media->arms_left_out = {4, 5};

  EXPECT_THAT(
      said(across_media_section(judgement)->remarks),
      HasSubstr("2 of the arms have no partner in every medium; they are left out here.\n"));
}

}  // namespace
}  // namespace keenfall::telling
