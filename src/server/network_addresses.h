// Where other machines of its networks find this one.
#pragma once

#include <string>
#include <vector>

namespace keenfall::server {

// IPv4, "192.168.1.5", of all networks that are up, but not of this machine's own (127.0.0.0/8):
// those for private use (RFC 1918) first, among them bridges to machines within this one last.
[[nodiscard]] std::vector<std::string> network_addresses();

}  // namespace keenfall::server
