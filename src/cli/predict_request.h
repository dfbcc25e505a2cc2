// What a predict command asks for, read from its words and checked.
//
// A blade is a steel, then its hardness and its apex angle where they are not the usual ones, in
// any order: "X153CrMoV12 61HRC 20deg-per-side".
#pragma once

#include "base/result.h"
#include "cli/typed_options.h"
#include "wear/predicted_ratio.h"
#include "workbench/apex_catalogue.h"

#include <string_view>

namespace keenfall::cli {

struct PredictRequest {
  wear::PredictionAsked asked;
  unsigned threads = 1;
};

// The hardness of the steel's row and 20 degrees per side where none is said.
[[nodiscard]] base::Result<wear::PredictedBlade> predicted_blade(
    const workbench::ApexCatalogue& catalogue, std::string_view words);

// One problem for each option that is not known and each word that cannot be used, all at once.
[[nodiscard]] base::ResultOrProblems<PredictRequest> predict_request(
    const ReadOptions& read, const workbench::ApexCatalogue& catalogue, unsigned threads_at_hand);

}  // namespace keenfall::cli
