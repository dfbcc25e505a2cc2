// The door for devices at the bench: reached from this machine's networks, let in by a code, and
// answered nothing but what the bench needs.
//
// It has pages of its own (/bench and what they load) and a key for each device; the desk's routes
// are not behind it. Made, begun beside the app, and stopped with it.
#pragma once

#include "base/result.h"
#include "server/http_server.h"
#include "server/paired_devices.h"
#include "server/routes.h"
#include "wire/devices.h"
#include "workbench/open_app.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::server {

inline constexpr std::uint16_t kUsualBenchPort = 17035;

class BenchDoor {
 public:
  struct Settings {
    std::optional<std::uint16_t> port = std::nullopt;
    std::vector<std::string> names = {};  // of this machine, such as the certificate has
    std::optional<Certificate> certificate = std::nullopt;
    PairedDevices::Settings devices;
    HttpLimits limits = {};
  };

  BenchDoor(workbench::OpenApp& open, Settings settings);
  BenchDoor(const BenchDoor&) = delete;
  BenchDoor& operator=(const BenchDoor&) = delete;
  BenchDoor(BenchDoor&&) = delete;
  BenchDoor& operator=(BenchDoor&&) = delete;
  ~BenchDoor() = default;

  // Nothing: it is open. Why not, as HttpServer::begun() says.
  [[nodiscard]] std::optional<base::Problem> begin();
  void stop();

  [[nodiscard]] std::uint16_t port() const;
  [[nodiscard]] PairedDevices& devices() { return devices_; }
  [[nodiscard]] const Routes& routes() const { return routes_; }
  [[nodiscard]] wire::DevicesTold told();

 private:
  [[nodiscard]] Admission admitted(const HttpRequest& without_body);
  [[nodiscard]] HttpResponse answer(const HttpRequest& request);
  [[nodiscard]] std::vector<std::string> addresses() const;

  Settings settings_;
  PairedDevices devices_;
  Routes routes_;
  std::optional<HttpServer> server_;
};

// What the desk is told where Keenfall was started without.
[[nodiscard]] wire::DevicesTold no_devices_told();

}  // namespace keenfall::server
