#include "sharpening/when_to_resharpen.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace keenfall::sharpening {
namespace {

double tan_of(double deg) { return std::tan(deg * std::numbers::pi / 180); }

ResharpeningQuestion seen(const EdgeDamage& damage) {
  return {
      .edge = {.bevel = {.bevel_angle = {15}, .thickness_behind_edge_mm = 0.3}, .damage = damage},
      .steel = materials::find_microstructure("C75S").value()};
}

BestMoment on_diamond(const ResharpeningQuestion& question, const DamageGrowth& growth) {
  return when_to_resharpen(question, find_stone("diamond").value(), growth).value();
}

// Wear: w^2 goes with the cuts. Chips here go with the cuts.
TEST(WhenToResharpen, LetsTheLandGrowByTheRootAndChipsEvenly) {
  const EdgeDamage damage = damage_after({4, 10}, {.seen_after_cuts = 100}, 25);

  EXPECT_DOUBLE_EQ(damage.land_um, 2);
  EXPECT_DOUBLE_EQ(damage.deepest_chip_um, 2.5);
}

// Chips h = c x and a micro-bevel that costs q h^2 minutes on a stone that stays fresh: least
// minutes at sqrt(setup/q)/c. q by hand: tan 15 tan 20/(tan 20 - tan 15) um^2 per um^2, times
// 1e-4 mm^3 per um^2, over v = 2e-3 * 3/R * 1.2 mm^3 a pass and 90 passes a minute.
TEST(WhenToResharpen, OfEvenChipsAndAMicroBevelIsTheClosedForm) {
  ResharpeningQuestion question = seen({.deepest_chip_um = 10});
  question.edge.micro_bevel_angle = trials::PerSideAngle{20};
  const double setup_minutes = 0.05;
  const double r = resharpening(question, std::vector{find_stone("diamond").value()})
                       ->stones[0]
                       .resistance_ratio;
  const double area_per_h2 = tan_of(15) * tan_of(20) / (tan_of(20) - tan_of(15));
  const double q = area_per_h2 * 1e-4 / (2e-3 * 3 / r * 1.2) / 90;

  const BestMoment best =
      on_diamond(question, {.seen_after_cuts = 100, .setup_minutes = setup_minutes});

  EXPECT_EQ(best.where, Where::inside);
  EXPECT_NEAR(best.cuts / (std::sqrt(setup_minutes / q) / 0.1), 1, 1e-6);
}

TEST(WhenToResharpen, OfWearAloneIsAsLateAsMayBe) {
  const BestMoment best =
      on_diamond(seen({.land_um = 4}), {.seen_after_cuts = 100, .setup_minutes = 3});

  EXPECT_EQ(best.where, Where::at_last);
  EXPECT_DOUBLE_EQ(best.cuts, 400);
}

// A micro-bevel of 16 on 15 degrees grows faster than the bevel is thick: 300 um are reached at
// h = 300 (tan 16 - tan 15)/(2 tan 15 tan 16), by hand 36.6 um, thus at 146 cuts of 0.25 um.
TEST(WhenToResharpen, StopsLookingWhereAMicroBevelSwallowsTheBevel) {
  ResharpeningQuestion question = seen({.deepest_chip_um = 25});
  question.edge.micro_bevel_angle = trials::PerSideAngle{16};

  const BestMoment best = on_diamond(question, {.seen_after_cuts = 100, .setup_minutes = 1000});

  EXPECT_EQ(best.where, Where::at_last);
  EXPECT_LT(best.cuts, 147);
  EXPECT_GT(best.cuts, 140);
}

TEST(WhenToResharpen, RefusesGrowthThatIsNoneAndEdgesThatAreNone) {
  const Stone stone = find_stone("diamond").value();
  const ResharpeningQuestion sound = seen({.land_um = 4});
  ResharpeningQuestion no_edge = sound;
  no_edge.edge.edge_length_mm = 0;

  EXPECT_EQ(when_to_resharpen(sound, stone, {0, 1}).error().place.column, "seen_after_cuts");
  EXPECT_EQ(when_to_resharpen(sound, stone, {100, -1}).error().place.column, "setup");
  for (const double cuts : {5e-324, 0.5, 2e9, 1e308}) {
    const auto refused = when_to_resharpen(sound, stone, {cuts, 1});
    ASSERT_FALSE(refused) << cuts;
    EXPECT_EQ(refused.error().place.column, "seen_after_cuts");
    EXPECT_EQ(refused.error().accepted, "1 to 1,000,000,000 cuts");
  }
  EXPECT_EQ(when_to_resharpen(sound, stone, {100, 1e306}).error().place.column, "setup");
  EXPECT_EQ(when_to_resharpen(no_edge, stone, {100, 1}).error().place.column, "edge_length");
}

}  // namespace
}  // namespace keenfall::sharpening
