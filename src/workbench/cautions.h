// The safety lines, short: said once a session by the app, and where a step calls for one.
#pragma once

#include <string>
#include <vector>

namespace keenfall::workbench {

[[nodiscard]] std::vector<std::string> cautions();

}  // namespace keenfall::workbench
