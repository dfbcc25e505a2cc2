// What is said across the comparisons of a trial, as JSON: media compared, factor effects, and each
// comparison's runs by themselves. Private to this folder (it shows the library).
#pragma once

#include "verdicts/judgement.h"
#include "wire/json_pieces.h"

namespace keenfall::wire {

[[nodiscard]] Json media_json(const verdicts::AcrossMedia& across,
                              const verdicts::Judgement& judgement);
[[nodiscard]] Json factors_json(const verdicts::FactorEffects& found, const std::string& unit);
[[nodiscard]] Json run_by_run_json(const verdicts::RunByRun& found);

}  // namespace keenfall::wire
