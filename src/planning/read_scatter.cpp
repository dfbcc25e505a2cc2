#include "planning/read_scatter.h"

#include "planning/checkpoints.h"

#include <algorithm>
#include <cmath>

namespace keenfall::planning {

std::optional<double> read_scatter(const trials::Plan& plan,
                                   const Assumptions& assumptions,
                                   std::size_t cutting) {
  if (cutting >= plan.cuttings.size() || cutting >= assumptions.cuttings.size() ||
      plan.reading.repeats < 1) {
    return std::nullopt;
  }
  const ExpectedCutting& expected = assumptions.cuttings[cutting];
  if (!(expected.half_keenness_cuts > 0 && expected.shape > 0 && expected.run_log_sd > 0)) {
    return std::nullopt;
  }
  const double error = half_keenness_error(
      plan.cuttings[cutting].checkpoint_cuts,
      {plan.reading.repeats, assumptions.reading_log_sd, assumptions.spot_log_sd},
      {.log_half_keenness = std::log(expected.half_keenness_cuts), .shape = expected.shape});
  constexpr double kTellsNothing = 1;  // the model's prior knows it better than such readings
  return std::hypot(expected.run_log_sd, std::min(error, kTellsNothing));
}

}  // namespace keenfall::planning
