// The look at each comparison by its runs alone, without the joint model.
#pragma once

#include "cli/look.h"
#include "verdicts/judgement.h"

#include <string>

namespace keenfall::cli {

// Empty where no comparison has such a look, or there are too many to list.
[[nodiscard]] std::string run_by_run_section(const verdicts::Judgement& judgement,
                                             const Look& look);

}  // namespace keenfall::cli
