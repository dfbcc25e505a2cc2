// Serial lines of this machine that a scale could be at, to choose from.
//
// Out: paths in the order in which they are worth trying: names that stay the same whichever socket
// an adapter is plugged into (serial/by-id), then USB lines that have no such name. Lines on the
// board (ttyS0) are left out: most that are named there do not exist.
#pragma once

#include <string>
#include <vector>

namespace keenfall::scale {

[[nodiscard]] std::vector<std::string> serial_devices(const std::string& folder = "/dev");

}  // namespace keenfall::scale
