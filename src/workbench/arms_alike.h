// Whether two arms may be one that was written down more fully once than the other time. Private to
// this folder.
#pragma once

#include "trials/trial.h"

namespace keenfall::workbench {

// What only one of them says does not tell them apart.
[[nodiscard]] bool may_be_one(const trials::Arm& one, const trials::Arm& other);

}  // namespace keenfall::workbench
