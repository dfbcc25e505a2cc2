// From fitted curves to what can be said: arms, ratios, verdicts, and what the data cannot say.
//
// Comparisons: all pairs of arms in one medium by one method; they are one family. The ratio that
// decides is at half keenness (or the kind's own default level), unless a level or a common reading
// is asked for, or edges of the family start differently: then at one common reading. A fit that is
// not usable yields arms and runs but no comparison. Method pages: docs/methods/verdicts.md,
// docs/methods/common-reading.md
#pragma once

#include "base/seed.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "materials/told_in.h"
#include "trials/trial.h"
#include "verdicts/described_curves.h"
#include "verdicts/judgement.h"

#include <optional>
#include <vector>

namespace keenfall::verdicts {

struct Question {
  double worth_it_margin = 1.5;        // above 1
  std::optional<double> stop_level;    // times the start, above 1
  std::optional<double> stop_reading;  // in the data's unit, above 0; not together with stop_level
  // Of what the ratios are to hold; absent: of the steels wherever both have several specimens.
  // Where a claim about the steels cannot be made, it stays one about these blades and that is
  // said.
  std::optional<ClaimAbout> claim;
  // Runs of every arm at each planned look: rising, the first at least 2. Empty: one look only.
  std::vector<int> looks;
  materials::ToldIn told_in;  // lengths; readings are told in the data's unit
};

[[nodiscard]] Judgement judge(const trials::Trial& trial,
                              const blunting::BluntingData& data,
                              const blunting::BluntingFit& fit,
                              const Question& question,
                              base::Seed seed);

// The same of curves that were described before, from the same data and fit.
[[nodiscard]] Judgement judge(const trials::Trial& trial,
                              const blunting::BluntingData& data,
                              const blunting::BluntingFit& fit,
                              const DescribedCurves& described,
                              const Question& question,
                              base::Seed seed);

}  // namespace keenfall::verdicts
