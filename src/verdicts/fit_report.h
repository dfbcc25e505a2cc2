// What a judgement says of a fit, whatever was fitted.
#pragma once

#include "base/seed.h"
#include "blunting/inference/fit_diagnostics.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::verdicts {

// draws: over all chains.
[[nodiscard]] FitReport fit_report(std::vector<std::string> model_parts,
                                   const blunting::FitDiagnostics& diagnostics,
                                   std::size_t draws,
                                   base::Seed seed);

}  // namespace keenfall::verdicts
