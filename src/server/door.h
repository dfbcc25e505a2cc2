// Where a server listens and under which names it may be asked.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::server {

inline constexpr std::uint16_t kUsualPort =
    17034;  // 17° per side is 34° inclusive; nobody's (IANA)

// Files in PEM: the certificate with those that vouch for it, and its private key.
struct Certificate {
  std::string chain_file;
  std::string key_file;
};

struct Door {
  std::optional<std::uint16_t> port = std::nullopt;  // nothing: the usual one, or any that is free
  std::uint16_t usual_port = kUsualPort;
  std::string port_option = "--port";  // what a person changes where the port cannot be had
  // Every IPv4 address of this machine; else the loopback address alone.
  bool is_for_network = false;
  std::vector<std::string> names = {};                    // beside its addresses: "bench.example"
  std::optional<Certificate> certificate = std::nullopt;  // TLS 1.2 or later, and nothing else
};

// Under what one connection may be asked: its own address is the first of `hosts`.
struct OwnAddress {
  bool is_encrypted = false;
  std::vector<std::string> hosts;  // in lower case, without a port
  std::uint16_t port = 0;
};

// "https://192.168.1.5:17035"
[[nodiscard]] std::string origin_of(const OwnAddress& own);

}  // namespace keenfall::server
