// How many times as long one blade is likely to stay keen as another in a medium, or in mixed work,
// from what they are made of: simulated, and never one number.
//
// The middle is the simulator's answer with the usual figures; the range is what its constants
// allow when each is drawn from its plausible range at once (sensitivity.h), the same draws for
// both blades. Plausible is not probable: this is no confidence interval, and was not held against
// measured edges. The steels' carbides and toughness come from tables (materials/microstructure.h).
// docs/methods/predicted-ratio.md
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "materials/card_depth.h"
#include "wear/apex_scenario.h"
#include "wear/sensitivity.h"

#include <optional>
#include <string>

namespace keenfall::wear {

struct PredictedBlade {
  materials::Microstructure steel;
  trials::PerSideAngle apex_angle{15};

  bool operator==(const PredictedBlade&) const = default;
};

struct PredictionAsked {
  PredictedBlade a;
  PredictedBlade b;
  WorkPlan work;
  std::string finish_name = "fine";
  EdgeFinish finish = fine_finish();
  double edge_length_mm = 10;  // simulated; longer scatters less and takes longer
  LifeAsked life{.runs = 10};
  SensitivityAsked over{.draws = 200, .seed = {}};
};

struct RatioPrediction {
  Sensitivity ratio;                  // of a's half keenness over b's
  std::optional<double> life_a_cuts;  // with the usual figures; the order of magnitude is tuned
  std::optional<double> life_b_cuts;
  std::optional<double> share_longer;  // of the draws: a lasts longer; where there is a range
  std::optional<materials::CardDepthsCompared> card;  // another test, another unit
  std::string no_card_because;                        // a sentence, where there is none
};

// Refused: what the simulator refuses. Fails as interrupted where the report asks to stop.
[[nodiscard]] base::Result<RatioPrediction> predicted_ratio(
    const PredictionAsked& asked,
    const base::Executor& executor,
    const base::ProgressReport& progress = base::unwatched());

}  // namespace keenfall::wear
