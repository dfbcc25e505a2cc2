// One connection: waits for a request, reads it, has it answered, writes the answer, and again.
// Private to the folder, as all that names Boost.Beast.
#pragma once

#include "server/door.h"
#include "server/http_line.h"
#include "server/http_message.h"
#include "server/http_server.h"
#include "server/refusal.h"

#include <boost/asio/io_context.hpp>
#include <boost/asio/thread_pool.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/http.hpp>

#include <atomic>
#include <chrono>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::server {

class HttpSession;

// What all sessions of a server share. Touched by the reading thread alone, but for `is_stopping`.
struct HttpFloor {
  HttpService service;
  HttpLimits limits;
  std::vector<std::string> names;  // under which it may be asked, beside its addresses
  std::optional<boost::asio::ssl::context> tls;
  boost::asio::io_context io{1};
  boost::asio::thread_pool answering;
  boost::asio::thread_pool changing;
  std::atomic<bool> is_stopping{false};
  std::set<std::shared_ptr<HttpSession>> sessions;
  std::function<void()> when_all_ended;

  HttpFloor(HttpService the_service, const HttpLimits& the_limits)
      : service(std::move(the_service)),
        limits(the_limits),
        answering(limits.answering_threads),
        changing(limits.changing_threads) {}
};

class HttpSession : public std::enable_shared_from_this<HttpSession> {
 public:
  HttpSession(HttpFloor& floor, boost::asio::ip::tcp::socket socket);

  void begin();

  [[nodiscard]] bool makes_room() const;
  // Nobody works on an answer, and none is being sent.
  [[nodiscard]] bool is_only_listening() const { return phase_ != Phase::answered; }
  [[nodiscard]] std::chrono::steady_clock::time_point listening_since() const {
    return listening_since_;
  }

  // Whatever it was about to do ends with a fault.
  void close();

 private:
  using Parser = boost::beast::http::request_parser<boost::beast::http::string_body>;
  using Response = boost::beast::http::response<boost::beast::http::string_body>;
  using Fault = boost::beast::error_code;
  // What a connection is about. What it was admitted to send is as good as being answered: it is
  // not ended to make room for another.
  enum class Phase { nothing_asked, half_asked, sending_body, answered };

  template <class Next>
  auto guarded(Next next);
  template <class Next>
  static auto guarded(std::shared_ptr<HttpSession> self, Next next);

  void end();
  void listen_anew();
  void shake_hands();
  void wait_for_request();
  void read_header();
  void read_more_of_header();
  void give_up(const Fault& fault);
  void refuse(const Refusal& refusal);
  void take_header();
  void admit();
  void let_it_be_sent(std::uint64_t most_bytes);
  void read_body(std::uint64_t most_bytes);
  void have_it_answered();
  [[nodiscard]] HttpResponse answer_made();
  void write(HttpResponse answer);
  void put_together(HttpResponse answer);
  void send();
  void take_leave();
  void hear_out();

  HttpFloor& floor_;
  HttpLine line_;
  OwnAddress own_;
  boost::beast::flat_buffer buffer_;
  std::optional<Parser> parser_;
  std::size_t header_bytes_ = 0;
  HttpRequest request_;
  std::optional<Response> response_;
  std::optional<boost::beast::http::response_serializer<boost::beast::http::string_body>>
      serializer_;
  bool keeps_open_ = false;
  bool may_wait_for_a_writer_ = false;
  Phase phase_ = Phase::nothing_asked;
  std::chrono::steady_clock::time_point listening_since_;
};

}  // namespace keenfall::server
