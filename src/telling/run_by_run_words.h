// The look at each comparison by its runs alone, without the joint model.
#pragma once

#include "telling/section.h"
#include "verdicts/judgement.h"

#include <optional>

namespace keenfall::telling {

// Absent where no comparison has such a look.
[[nodiscard]] std::optional<Section> run_by_run_section(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
