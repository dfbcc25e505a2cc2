#include "server/network_addresses.h"

#include <algorithm>
#include <array>
#include <memory>
#include <string_view>
#include <utility>

#include <arpa/inet.h>
#include <ifaddrs.h>
#include <net/if.h>
#include <netinet/in.h>

namespace keenfall::server {

namespace {

// 10/8, 172.16/12 and 192.168/16.
bool is_for_private_use(std::uint32_t address) {
  return (address >> 24U) == 10 || (address >> 20U) == 0xAC1 || (address >> 16U) == 0xC0A8;
}

// By how names of such interfaces begin, as Linux programs give them.
bool is_within_this_machine(std::string_view interface) {
  constexpr std::array<std::string_view, 4> kBridges{"docker", "br-", "virbr", "veth"};
  return std::ranges::any_of(kBridges,
                             [&](std::string_view begin) { return interface.starts_with(begin); });
}

}  // namespace

std::vector<std::string> network_addresses() {
  ifaddrs* first = nullptr;
  if (getifaddrs(&first) != 0) return {};
  const std::unique_ptr<ifaddrs, void (*)(ifaddrs*)> all(first, freeifaddrs);
  std::vector<std::pair<int, std::string>> found;
  for (const ifaddrs* one = first; one != nullptr; one = one->ifa_next) {
    const bool is_up = (one->ifa_flags & IFF_UP) != 0 && (one->ifa_flags & IFF_LOOPBACK) == 0;
    if (!is_up || one->ifa_addr == nullptr || one->ifa_addr->sa_family != AF_INET) continue;
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): how sockets tell every address
    const in_addr address = reinterpret_cast<const sockaddr_in*>(one->ifa_addr)->sin_addr;
    std::array<char, INET_ADDRSTRLEN> text{};
    if (inet_ntop(AF_INET, &address, text.data(), text.size()) == nullptr) continue;
    const int rank = (is_for_private_use(ntohl(address.s_addr)) ? 0 : 2) +
                     (is_within_this_machine(one->ifa_name) ? 1 : 0);
    found.emplace_back(rank, text.data());
  }
  std::ranges::stable_sort(found, {}, &std::pair<int, std::string>::first);
  std::vector<std::string> addresses;
  for (auto& [rank, address] : found) addresses.push_back(std::move(address));
  return addresses;
}

}  // namespace keenfall::server
