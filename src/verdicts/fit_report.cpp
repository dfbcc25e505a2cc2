#include "verdicts/fit_report.h"

#include <utility>

namespace keenfall::verdicts {

FitReport fit_report(std::vector<std::string> model_parts,
                     const blunting::FitDiagnostics& diagnostics,
                     std::size_t draws,
                     base::Seed seed) {
  return {.model = "default",
          .model_parts = std::move(model_parts),
          .usable = diagnostics.usable,
          .reasons = diagnostics.reasons,
          .r_hat_max = diagnostics.r_hat_max,
          .ess_bulk_min = diagnostics.ess_bulk_min,
          .ess_tail_min = diagnostics.ess_tail_min,
          .divergences = diagnostics.divergences,
          .draws = static_cast<int>(draws),
          .seed = seed.number};
}

}  // namespace keenfall::verdicts
