#include "server/app.h"

#include "base/require.h"
#include "server/key.h"
#include "server/refusal.h"
#include "server/site.h"
#include "server/work_routes.h"

#include <utility>

namespace keenfall::server {

App::App(const AppSettings& settings)
    : settings_(settings), key_(random_key()), works_(settings.work) {
  add_work_routes(routes_, works_);
}

App::~App() { stop(); }

base::Result<std::string> App::begin() {
  base::require(!server_, "an app begins once");
  auto server =
      HttpServer::begun({.port = settings_.port},
                        {.admit = [this](const HttpRequest& request) { return admitted(request); },
                         .answer = [this](const HttpRequest& request) { return answer(request); }},
                        settings_.limits);
  if (!server) return base::failed(server.error());
  server_.emplace(std::move(*server));
  return "http://127.0.0.1:" + std::to_string(port()) + "/#key=" + key_;
}

std::uint16_t App::port() const {
  base::require(server_.has_value(), "an app has a port once it has begun");
  return server_->port();
}

void App::stop() {
  works_.stop();
  if (server_) server_->stop();
}

Admission App::admitted(const HttpRequest& without_body) const {
  if (!is_api(without_body.path)) return {};
  if (!is_key(header_of(without_body, "x-keenfall-key"), key_)) {
    constexpr int kUnauthorized = 401;
    return {.refused = refused({.status = kUnauthorized,
                                .kind = "not_allowed",
                                .sentence = "This page does not have the key of the Keenfall that "
                                            "runs now. Open the address that it printed."},
                               without_body.path)};
  }
  return {.body_bytes = routes_.body_bytes_of(without_body),
          .may_wait_for_a_writer = routes_.may_wait_for_a_writer(without_body)};
}

HttpResponse App::answer(const HttpRequest& request) const {
  return is_api(request.path) ? routes_.answer(request) : site_answer(request, own_pages());
}

}  // namespace keenfall::server
