// After how many cuts an edge like this one is best sharpened again on a given stone, where its
// damage was seen once.
//
// In: the question whose damage was seen after `seen_after_cuts`, and what every sharpening costs
// besides (fetching, wetting, the burr, the finer stones). The land is taken to grow with the
// square root of the cuts (steady wear), chips with the cuts. Out: the best moment by the typical
// constants and over joint draws of all of them. The search runs from a hundredth of the cuts seen
// to four times as many, or to where the geometry fails (a micro-bevel would swallow the bevel).
// Fails where the geometry does. docs/methods/resharpening.md.
#pragma once

#include "base/result.h"
#include "sharpening/best_moment.h"
#include "sharpening/resharpening.h"

namespace keenfall::sharpening {

struct DamageGrowth {
  double seen_after_cuts = 0;  // 1 to 1e9
  double setup_minutes = 0;    // 0 to 1e6

  bool operator==(const DamageGrowth&) const = default;
};

// The damage after so many cuts.
[[nodiscard]] EdgeDamage damage_after(const EdgeDamage& seen,
                                      const DamageGrowth& growth,
                                      double cuts);

struct MomentOverDraws {
  BestMoment typical;
  numerics::Interval cuts;  // an end of the stretch where the moment lies there
  numerics::Interval minutes_per_1000_cuts;
  double fraction_at_first = 0;  // of the draws
  double fraction_at_last = 0;
  double looked_to_cuts = 0;  // the end of the stretch
  int draws = 0;              // those of the question, at most 400
};

[[nodiscard]] std::vector<base::Problem> problems_of(const DamageGrowth& growth);

[[nodiscard]] base::Result<MomentOverDraws> when_to_resharpen(const ResharpeningQuestion& question,
                                                              const Stone& stone,
                                                              const DamageGrowth& growth);

}  // namespace keenfall::sharpening
