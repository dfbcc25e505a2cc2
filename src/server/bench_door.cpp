#include "server/bench_door.h"

#include "base/require.h"
#include "server/answers.h"
#include "server/app_parts.h"
#include "server/network_addresses.h"
#include "server/qr_code.h"
#include "server/site.h"

#include <utility>

namespace keenfall::server {

namespace {

constexpr const char* kAskToBeLetIn = "/api/v1/let-in";
constexpr std::uint64_t kAskBytes = 4096;

std::vector<std::string> cautions_of(bool is_encrypted) {
  if (is_encrypted) {
    return {
        "A device shows a warning unless it trusts this certificate. Compare what it shows "
        "with your own before you go on."};
  }
  return {
      "What goes between a device and this machine is not encrypted: whoever listens on this "
      "network can read it, and can go on with a device's key. Use a network you trust, or a "
      "certificate (--bench-certificate).",
      "What is tapped while the network is away waits on the device and is sent when it is back. "
      "Without a certificate a page that was closed cannot be opened again until then."};
}

}  // namespace

wire::DevicesTold no_devices_told() {
  return {.cautions = {"No device is let in. keenfall open --bench lets them in, from the networks "
                       "this machine is on."}};
}

BenchDoor::BenchDoor(workbench::OpenApp& open, Settings settings)
    : settings_(std::move(settings)), devices_(settings_.devices) {
  add_bench_routes(routes_, open, AtDesk::no);
  add_scale_routes(routes_, open, AtDesk::no);
  routes_.add("POST",
              kAskToBeLetIn,
              [this](const HttpRequest& request, const PathParameters&) {
                const auto ask = wire::ask_to_be_let_in_from(request.body);
                if (!ask) return problems_answer(ask.error());
                const auto key = devices_.let_in(*ask, request.from);
                return key ? json_answer(wire::let_in_to_json(*key))
                           : refused(key.error(), request.path);
              },
              {.body_bytes = kAskBytes, .does = RouteDoes::reads});
}

std::optional<base::Problem> BenchDoor::begin() {
  base::require(!server_, "a door is opened once");
  auto server =
      HttpServer::begun({.port = settings_.port,
                         .usual_port = kUsualBenchPort,
                         .port_option = "--bench-port",
                         .is_for_network = true,
                         .names = settings_.names,
                         .certificate = settings_.certificate},
                        {.admit = [this](const HttpRequest& request) { return admitted(request); },
                         .answer = [this](const HttpRequest& request) { return answer(request); }},
                        settings_.limits);
  if (!server) return server.error();
  server_.emplace(std::move(*server));
  return std::nullopt;
}

void BenchDoor::stop() {
  if (server_) server_->stop();
}

std::uint16_t BenchDoor::port() const {
  base::require(server_.has_value(), "a door has a port once it is open");
  return server_->port();
}

Admission BenchDoor::admitted(const HttpRequest& without_body) {
  if (!is_api(without_body.path)) return {};
  const bool is_asking = without_body.path == kAskToBeLetIn;
  if (!is_asking && !devices_.is_let_in(header_of(without_body, "x-keenfall-key"))) {
    return {.refused = refused({.status = 401,
                                .kind = "not_let_in",
                                .sentence = "This device is not let in. Ask for a code at the "
                                            "desk, under Devices."},
                               without_body.path)};
  }
  // Who is not let in yet keeps nobody out.
  return {.body_bytes = routes_.body_bytes_of(without_body),
          .makes_room = is_asking,
          .may_wait_for_a_writer = routes_.may_wait_for_a_writer(without_body)};
}

HttpResponse BenchDoor::answer(const HttpRequest& request) {
  devices_.keep_seen();
  return is_api(request.path) ? routes_.answer(request)
                              : site_answer(request, own_pages(), FirstPage::bench);
}

std::vector<std::string> BenchDoor::addresses() const {
  std::vector<std::string> hosts = settings_.names;
  for (std::string& address : network_addresses()) hosts.push_back(std::move(address));
  std::vector<std::string> addresses;
  for (const std::string& host : hosts) {
    addresses.push_back(origin_of(
        {.is_encrypted = settings_.certificate.has_value(), .hosts = {host}, .port = port()}));
  }
  return addresses;
}

wire::DevicesTold BenchDoor::told() {
  const bool is_encrypted = settings_.certificate.has_value();
  wire::DevicesTold told{.is_open = true,
                         .is_encrypted = is_encrypted,
                         .addresses = addresses(),
                         .devices = devices_.all(),
                         .cautions = cautions_of(is_encrypted)};
  if (std::string tries = devices_.wrong_tries_in_words(); !tries.empty()) {
    told.cautions.insert(told.cautions.begin(), std::move(tries));
  }
  if (const auto code = devices_.code(); code && !told.addresses.empty()) {
    const std::string address = told.addresses.front() + "/bench#code=" + code->code;
    told.letting_in = {.code = code->code,
                       .seconds_left = static_cast<double>(code->left.count()),
                       .address = address,
                       .squares = qr_code(address)};
  }
  return told;
}

}  // namespace keenfall::server
