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

}  // namespace
}  // namespace keenfall::telling
