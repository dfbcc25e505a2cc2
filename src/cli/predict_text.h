// A predicted ratio in words: the answer first, then what it hangs on, then the second opinion.
#pragma once

#include "cli/look.h"
#include "wear/predicted_ratio.h"

#include <string>

namespace keenfall::cli {

[[nodiscard]] std::string prediction_text(const wear::PredictionAsked& asked,
                                          const wear::RatioPrediction& predicted,
                                          const Look& look);

}  // namespace keenfall::cli
