// Runs that were not used, readings struck out or doubtful, and what was remarked on runs and
// pairs.
#pragma once

#include "telling/section.h"
#include "verdicts/judgement.h"

#include <optional>

namespace keenfall::telling {

[[nodiscard]] std::optional<Section> noticed_in_the_runs(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
