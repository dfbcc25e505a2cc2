// The app as it is served: its pages, the routes of its API behind a key, and its long work.
//
// Made, its routes filled by whoever has something to answer, begun, and stopped:
//
//   App app({.program_version = "0.1.0"});
//   app.routes().add("GET", "/api/v1/home", ...);
//   const auto address = app.begin();   // "http://127.0.0.1:17034/#key=..."
//   ...
//   app.stop();
#pragma once

#include "base/result.h"
#include "server/http_server.h"
#include "server/routes.h"
#include "server/works.h"

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::server {

struct AppSettings {
  std::optional<std::uint16_t> port = std::nullopt;  // nothing: the usual one, or any free one
  Works::Rules work = {};
  HttpLimits limits = {};
};

class App {
 public:
  explicit App(const AppSettings& settings = {});
  App(const App&) = delete;
  App& operator=(const App&) = delete;
  App(App&&) = delete;
  App& operator=(App&&) = delete;
  ~App();  // stops

  // To be filled before it begins.
  [[nodiscard]] Routes& routes() { return routes_; }
  // What handlers may start; lives as long as the app.
  [[nodiscard]] Works& works() { return works_; }

  // The address to open, with the key. Fails where the port asked for cannot be had.
  [[nodiscard]] base::Result<std::string> begin();

  [[nodiscard]] std::uint16_t port() const;
  [[nodiscard]] const std::string& key() const { return key_; }

  // Stops long work, lets the answers being made be sent, and ends all threads.
  void stop();

 private:
  [[nodiscard]] Admission admitted(const HttpRequest& without_body) const;
  [[nodiscard]] HttpResponse answer(const HttpRequest& request) const;

  AppSettings settings_;
  std::string key_;
  Routes routes_;
  Works works_;
  std::optional<HttpServer> server_;
};

}  // namespace keenfall::server
