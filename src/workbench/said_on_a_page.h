// Problems with tables in the words of a page: what a person would say with an option of the
// command is chosen there.
#pragma once

#include "base/result.h"

#include <vector>

namespace keenfall::workbench {

[[nodiscard]] base::Problem said_on_a_page(base::Problem problem);
[[nodiscard]] std::vector<base::Problem> said_on_a_page(std::vector<base::Problem> problems);

}  // namespace keenfall::workbench
