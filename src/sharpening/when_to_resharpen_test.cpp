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

materials::Microstructure at_its_typical_figures(materials::Microstructure steel) {
  const auto just = [](double number) { return materials::PlausibleRange{number, number, {}}; };
  steel.matrix_hv_range = just(steel.matrix_hv);
  steel.carbide_volume_fraction = 0;  // so that no cap matters
  steel.carbide_volume_fraction_range = just(0);
  steel.carbide_hv_range = just(steel.carbide_hv);
  steel.carbide_diameter_um_range = just(steel.carbide_diameter_um);
  return steel;
}

BestMoment on_diamond(const ResharpeningQuestion& question, const DamageGrowth& growth) {
  return when_to_resharpen(question, find_stone("diamond").value(), growth).value().typical;
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

// Chips h = c x on parallel faces take steel that goes with the cuts. On a stone that glazes, n
// passes do the work of f(n) = k n + (1 - k) n_g (1 - exp(-n/n_g)) fresh ones; the minutes per cut,
// (s + n)/f by passes, are least where f/f' - n is the s passes that setting up is worth. That
// grows with n, to n_g (1 - k)/k: a dearer setting up has no best moment.
TEST(WhenToResharpen, OfEvenChipsOnParallelFacesComesFromGlazingAlone) {
  ResharpeningQuestion question = seen({.deepest_chip_um = 10});
  question.edge.bevel.primary_angle = {0};
  question.steel = at_its_typical_figures(question.steel);
  const Stone stone = find_stone("fused alumina").value();
  const DamageGrowth growth = {.seen_after_cuts = 100, .setup_minutes = 1};

  const BestMoment best = when_to_resharpen(question, stone, growth).value().typical;

  EXPECT_EQ(best.where, Where::inside);
  ResharpeningQuestion at_best = question;
  at_best.edge.damage = damage_after(question.edge.damage, growth, best.cuts);
  const StoneEffort effort = resharpening(at_best, std::vector{stone})->stones[0];
  const double n = effort.typical.passes;
  const double n_g = effort.glazing_passes;
  const double k = stone.blunt_share_fraction.typical;
  const double f = k * n + (1 - k) * n_g * (1 - std::exp(-n / n_g));
  const double slope = k + (1 - k) * std::exp(-n / n_g);
  const double setup_passes = growth.setup_minutes * question.work.passes_per_minute;
  EXPECT_NEAR((f / slope - n) / setup_passes, 1, 1e-4);

  const double no_longer_minutes = n_g * (1 - k) / k / question.work.passes_per_minute;
  const DamageGrowth dearer = {.seen_after_cuts = 100, .setup_minutes = 1.01 * no_longer_minutes};
  EXPECT_EQ(when_to_resharpen(question, stone, dearer)->typical.where, Where::at_last);
  EXPECT_EQ(on_diamond(question, growth).where, Where::at_last);  // which stays fresh
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

// The closed form √(S/q)/c goes with the root of the rate by force and path: over a stone that
// keeps its rate, with k0 alone uncertain from k/10 to k, the middle 90 % span 10^(0.9/2).
TEST(WhenToResharpen, IsARangeOverTheJointDraws) {
  ResharpeningQuestion question = seen({.deepest_chip_um = 10});
  question.edge.micro_bevel_angle = trials::PerSideAngle{20};
  question.steel = at_its_typical_figures(question.steel);
  Stone stone = find_stone("fused alumina").value();
  for (Estimate* each : {&stone.abrasive_hv,
                         &stone.groove_width_um,
                         &stone.cutting_power_ratio,
                         &stone.blunt_share_fraction}) {
    each->typical = each == &stone.blunt_share_fraction ? 1 : each->typical;
    each->lo = each->hi = each->typical;
  }

  const auto found =
      when_to_resharpen(question, stone, {.seen_after_cuts = 100, .setup_minutes = 0.05}).value();

  EXPECT_EQ(found.draws, 400);
  EXPECT_EQ(found.fraction_at_first + found.fraction_at_last, 0);
  EXPECT_LT(found.cuts.lo90, found.typical.cuts);
  EXPECT_GT(found.cuts.hi90, found.typical.cuts);
  EXPECT_NEAR(std::log10(found.cuts.hi90 / found.cuts.lo90), 0.45, 0.02);
  // Dearer where it is sooner: the least minutes go with the inverse of the cuts, √(S q).
  EXPECT_NEAR(found.minutes_per_1000_cuts.hi90 * found.cuts.lo90 /
                  (found.minutes_per_1000_cuts.lo90 * found.cuts.hi90),
              1,
              1e-6);
}

TEST(WhenToResharpen, SaysInHowManyDrawsItIsAsLateAsMayBe) {
  const auto wear = when_to_resharpen(seen({.land_um = 4}),
                                      find_stone("diamond").value(),
                                      {.seen_after_cuts = 100, .setup_minutes = 3})
                        .value();

  EXPECT_EQ(wear.fraction_at_last, 1);
  EXPECT_DOUBLE_EQ(wear.cuts.lo90, 400);
  EXPECT_DOUBLE_EQ(wear.looked_to_cuts, 400);
}

// What is known of one's own stone narrows the moment as it does the passes.
TEST(WhenToResharpen, IsKnownBetterWherePassesWereCounted) {
  ResharpeningQuestion question = seen({.deepest_chip_um = 10});
  question.edge.micro_bevel_angle = trials::PerSideAngle{20};
  const DamageGrowth growth = {.seen_after_cuts = 100, .setup_minutes = 0.05};
  const auto span = [&] {
    const auto cuts =
        when_to_resharpen(question, find_stone("diamond").value(), growth).value().cuts;
    return std::log(cuts.hi90 / cuts.lo90);
  };
  const double by_model = span();

  question.counted = CountedStrokes{.passes = 20, .removed_mm3 = {0.1, 0.09, 0.11, {}}};

  EXPECT_LT(span(), by_model / 3);
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
