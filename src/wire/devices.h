// Devices that are let in at the bench, as they are kept, as the desk shows them, and how one asks
// to be let in. Shapes: docs/wire/api.json (Devices, LetIn, AskToBeLetIn).
#pragma once

#include "base/result.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

struct Device {
  std::string id;          // 22 characters
  std::string name;        // as whoever holds it calls it
  std::string key_digest;  // of its key, which is kept nowhere but on it
  std::string let_in_at_utc;
  std::string last_seen_at_utc;

  bool operator==(const Device&) const = default;
};

// A code that lets one device in, once.
struct LettingIn {
  std::string code;  // "K7MP-2WXR"
  double seconds_left = 0;
  std::string address;               // with the code, as the picture says it
  std::vector<std::string> squares;  // the picture (QR), row by row: "1" dark, "0" light; no margin
};

struct DevicesTold {
  bool is_open = false;                // Keenfall was started for it
  bool is_encrypted = false;           // by TLS
  std::vector<std::string> addresses;  // "http://192.168.1.5:17035", of this machine's networks
  std::optional<LettingIn> letting_in;
  std::vector<Device> devices;        // in the order they were let in
  std::vector<std::string> cautions;  // what the way it is open means
};

struct AskToBeLetIn {
  std::string code;
  std::string name;
};

[[nodiscard]] std::string devices_to_json(const DevicesTold& told);
[[nodiscard]] std::string let_in_to_json(const std::string& key);
[[nodiscard]] base::ResultOrProblems<AskToBeLetIn> ask_to_be_let_in_from(const std::string& body);

// As they are kept in a file; nothing where that is not one of ours.
[[nodiscard]] std::string kept_devices_to_json(const std::vector<Device>& devices);
[[nodiscard]] std::optional<std::vector<Device>> kept_devices_from(const std::string& text);

}  // namespace keenfall::wire
