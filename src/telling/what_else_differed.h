// What could explain a difference besides the blades: what else differed between the arms of each
// pair, what was not recorded, and what a run's own circumstances did.
#pragma once

#include "telling/section.h"
#include "verdicts/judgement.h"

#include <optional>

namespace keenfall::telling {

[[nodiscard]] std::optional<Section> what_else_differed(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
