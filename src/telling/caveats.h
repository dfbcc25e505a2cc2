// What stands below the verdicts: whether a quicker calculation agrees, what the curves miss, what
// the data cannot say, how they were read, and the fit behind it all.
#pragma once

#include "telling/section.h"
#include "verdicts/judgement.h"

#include <optional>

namespace keenfall::telling {

// Absent where there is nothing to say.
[[nodiscard]] std::optional<Section> curve_warnings(const verdicts::Judgement& judgement);
[[nodiscard]] std::optional<Section> what_cannot_be_said(const verdicts::Judgement& judgement);
[[nodiscard]] std::optional<Section> how_it_was_read(const verdicts::Judgement& judgement);
[[nodiscard]] std::optional<Section> second_opinion(const verdicts::Judgement& judgement);

[[nodiscard]] Section the_fit(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
