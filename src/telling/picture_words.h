// Words and numbers beside what a picture draws, rounded as the sentences and tables round them.
#pragma once

#include "numerics/interval.h"
#include "verdicts/judgement.h"

#include <functional>
#include <optional>
#include <string>

namespace keenfall::telling {

// "34 (27 to 42)": the median and the 95 % interval.
[[nodiscard]] std::string interval_text(const numerics::Interval& interval,
                                        const std::function<std::string(double)>& rounded);

// Where a curve is read: "14", "2.41": three figures, so that places beside each other differ.
[[nodiscard]] std::string place_text(double cuts);

// A place on a curve read off: "102 gf (98 to 106)", "557 gf (503 to 617, beyond what was cut)".
[[nodiscard]] std::string curve_point_words(const verdicts::Judgement& judgement,
                                            const verdicts::CurvePoint& point);

// "102 gf"; empty where the arm has no start.
[[nodiscard]] std::string start_words(const verdicts::Judgement& judgement,
                                      const verdicts::ArmResult& arm);

// What starts are, as an axis says it: "thread push reading at 0 cuts, gf".
[[nodiscard]] std::string starts_words(const verdicts::Judgement& judgement);

// "finish: 1 µm against 9 µm".
[[nodiscard]] std::string effect_name(const verdicts::FactorEffects& found,
                                      const verdicts::FactorEffect& effect);

// The reading that an edge starting typically has come to where arms are compared, in the
// judgement's unit; absent where the arm has no start, or failing a test means no known level.
[[nodiscard]] std::optional<double> reading_compared(const verdicts::Judgement& judgement,
                                                     const verdicts::ArmResult& arm,
                                                     const verdicts::At& at);

}  // namespace keenfall::telling
