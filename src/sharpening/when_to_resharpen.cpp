#include "sharpening/when_to_resharpen.h"

#include "base/plain_number.h"

#include <algorithm>
#include <cmath>

namespace keenfall::sharpening {

namespace {

constexpr double kFarthest = 4;  // times the cuts seen: beyond, growth is anybody's guess
constexpr double kEarliest = 0.01;
constexpr double kStepBack = 0.97;
constexpr double kMostCutsSeen = 1e9;
constexpr double kLongestSetupMinutes = 1e6;

base::Result<Effort> effort_after(ResharpeningQuestion question,
                                  const Stone& stone,
                                  const DamageGrowth& growth,
                                  double cuts) {
  question.edge.damage = damage_after(question.edge.damage, growth, cuts);
  return typical_effort(question, stone);
}

}  // namespace

EdgeDamage damage_after(const EdgeDamage& seen, const DamageGrowth& growth, double cuts) {
  const double times = cuts / growth.seen_after_cuts;
  return {.land_um = seen.land_um * std::sqrt(times),
          .deepest_chip_um = seen.deepest_chip_um * times};
}

base::Result<BestMoment> when_to_resharpen(const ResharpeningQuestion& question,
                                           const Stone& stone,
                                           const DamageGrowth& growth) {
  if (!(growth.seen_after_cuts >= 1 && growth.seen_after_cuts <= kMostCutsSeen)) {
    return base::failed({.sentence = "damage seen after " +
                                     base::plain_number(growth.seen_after_cuts) +
                                     " cuts does not say how it grows",
                         .place = {.column = "seen_after_cuts"},
                         .accepted = "1 to 1,000,000,000 cuts"});
  }
  if (!(growth.setup_minutes >= 0 && growth.setup_minutes <= kLongestSetupMinutes)) {
    return base::failed(
        {.sentence = "setting up cannot take " + base::plain_number(growth.setup_minutes) + " min",
         .place = {.column = "setup"},
         .accepted = "0 to 1,000,000 min"});
  }
  if (const auto now = typical_effort(question, stone); !now) return base::failed(now.error());
  double last = kFarthest * growth.seen_after_cuts;
  // After the cuts seen the damage is what was asked for, and that was just worked with.
  while (last > growth.seen_after_cuts && !effort_after(question, stone, growth, last)) {
    last = std::max(growth.seen_after_cuts, last * kStepBack);
  }
  const auto minutes = [&](double cuts) {
    return effort_after(question, stone, growth, cuts).value().minutes;
  };
  return best_moment(
      growth.setup_minutes, minutes, {.first = kEarliest * growth.seen_after_cuts, .last = last});
}

}  // namespace keenfall::sharpening
