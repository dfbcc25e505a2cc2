#include "server/http_server.h"

#include "base/require.h"
#include "server/http_session.h"
#include "server/tls.h"

#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/steady_timer.hpp>

#include <memory>
#include <string>
#include <thread>
#include <utility>

namespace keenfall::server {

namespace asio = boost::asio;
using tcp = asio::ip::tcp;
using Fault = boost::beast::error_code;

struct HttpServer::Inside {
  HttpFloor floor;
  asio::executor_work_guard<asio::io_context::executor_type> work;
  tcp::acceptor acceptor;
  asio::steady_timer pause;
  std::thread reading;
  bool is_accepting = false;  // or will be, after a pause; of the reading thread
  std::uint16_t port = 0;

  Inside(HttpService service, const HttpLimits& limits)
      : floor(std::move(service), limits),
        work(asio::make_work_guard(floor.io)),
        acceptor(floor.io),
        pause(floor.io) {}

  Fault listen(const Door& door, std::uint16_t wanted_port) {
    Fault fault;
    const auto address =
        door.is_for_network ? asio::ip::address_v4::any() : asio::ip::address_v4::loopback();
    const tcp::endpoint place(address, wanted_port);
    acceptor.open(place.protocol(), fault);
    if (!fault) acceptor.set_option(tcp::acceptor::reuse_address(true), fault);
    if (!fault) acceptor.bind(place, fault);
    if (!fault) acceptor.listen(static_cast<int>(floor.limits.connections), fault);
    if (!fault) port = acceptor.local_endpoint(fault).port();
    if (fault) {
      Fault ignored;
      acceptor.close(ignored);
    }
    return fault;
  }

  void accept() {
    acceptor.async_accept([this](const Fault& fault, tcp::socket socket) {
      if (fault == asio::error::operation_aborted) return;
      is_accepting = false;
      if (fault) return accept_later();
      make_room();
      take_in(std::move(socket));
      accept();
    });
    is_accepting = true;
  }

  void take_in(tcp::socket socket) {
    if (floor.sessions.size() >= floor.limits.connections) return;
    const auto session = std::make_shared<HttpSession>(floor, std::move(socket));
    floor.sessions.insert(session);
    try {
      session->begin();
    } catch (const std::exception&) {
      session->close();
    }
  }

  // The machine has no more to give, for now.
  void accept_later() {
    constexpr std::chrono::milliseconds kPause{50};
    pause.expires_after(kPause);
    pause.async_wait([this](const Fault& fault) {
      is_accepting = false;
      if (!fault) accept();
    });
    is_accepting = true;
  }

  // Until it is stopped. What throws on the way (memory that cannot be had) costs the one thing
  // that was being done; whoever comes next is accepted.
  void read() {
    while (true) {
      try {
        if (!is_accepting && acceptor.is_open()) accept_later();
        floor.io.run();
        return;
      } catch (const std::exception&) {
        continue;
      }
    }
  }

  // Ends the connection that has asked for nothing, or for half, the longest.
  void make_room() {
    if (floor.sessions.size() < floor.limits.connections) return;
    std::shared_ptr<HttpSession> longest;
    for (const auto& session : floor.sessions) {
      if (!session->makes_room()) continue;
      const bool is_longer = !longest || session->listening_since() < longest->listening_since();
      if (is_longer) longest = session;
    }
    if (longest) longest->close();
  }

  void close_those(bool (*is_meant)(const HttpSession&)) {
    const auto all = floor.sessions;
    for (const auto& session : all) {
      if (is_meant(*session)) session->close();
    }
  }

  void stop_listening() {
    Fault ignored;
    acceptor.close(ignored);
    pause.cancel();
    close_those([](const HttpSession& session) { return session.is_only_listening(); });
  }

  void end_soon() {
    if (floor.sessions.empty()) return;
    floor.when_all_ended = [this] { pause.cancel(); };
    pause.expires_after(floor.limits.last_words_time);
    pause.async_wait(
        [this](const Fault&) { close_those([](const HttpSession&) { return true; }); });
  }

  void stop() {
    if (floor.is_stopping.exchange(true)) return;
    asio::post(floor.io, [this] { stop_listening(); });
    floor.answering.join();
    floor.changing.join();
    asio::post(floor.io, [this] { end_soon(); });
    work.reset();
    if (reading.joinable()) reading.join();
  }
};

base::Result<HttpServer> HttpServer::begun(const Door& door,
                                           HttpService service,
                                           const HttpLimits& limits) {
  base::require(service.admit && service.answer, "a server has somebody who answers");
  auto inside = std::make_unique<Inside>(std::move(service), limits);
  inside->floor.names = door.names;
  if (door.certificate) {
    auto tls = tls_with(*door.certificate);
    if (!tls) return base::failed(tls.error());
    inside->floor.tls.emplace(*std::move(tls));
  }
  const std::uint16_t first = door.port.value_or(door.usual_port);
  Fault fault = inside->listen(door, first);
  if (fault && !door.port) fault = inside->listen(door, 0);
  if (fault) {
    const std::string number = std::to_string(first);
    return base::failed(
        {.kind = base::ProblemKind::unreadable,
         .sentence =
             "Port " + number + " of this machine cannot be listened at: " + fault.message() + ".",
         .place = {.column = door.port_option, .found = number},
         .accepted = "a port that is free; without " + door.port_option + " one is found"});
  }
  inside->accept();
  inside->reading = std::thread([here = inside.get()] { here->read(); });
  return HttpServer(std::move(inside));
}

HttpServer::HttpServer(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
HttpServer::HttpServer(HttpServer&&) noexcept = default;
HttpServer& HttpServer::operator=(HttpServer&& other) noexcept {
  if (inside_) inside_->stop();
  inside_ = std::move(other.inside_);
  return *this;
}
HttpServer::~HttpServer() {
  if (inside_) inside_->stop();
}

std::uint16_t HttpServer::port() const { return inside_->port; }

void HttpServer::stop() { inside_->stop(); }

}  // namespace keenfall::server
