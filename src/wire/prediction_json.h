// A predicted ratio as documented JSON: what was asked, the range, and what it hangs on.
//
// One document in UTF-8, ending in a newline. Shape: docs/wire/prediction.schema.json.
#pragma once

#include "wear/predicted_ratio.h"

#include <string>

namespace keenfall::wire {

inline constexpr int kPredictionFormatVersion = 1;

struct PredictionDocument {
  std::string program_version;
  wear::PredictionAsked asked;
  wear::RatioPrediction predicted;
};

[[nodiscard]] std::string prediction_to_json(const PredictionDocument& document);

}  // namespace keenfall::wire
