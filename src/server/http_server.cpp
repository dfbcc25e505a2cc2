#include "server/http_server.h"

#include "base/require.h"
#include "server/failure.h"
#include "server/refusal.h"
#include "server/request_target.h"
#include "server/strict_headers.h"
#include "server/who_may_ask.h"

#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/thread_pool.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>

#include <algorithm>
#include <array>
#include <atomic>
#include <set>
#include <string>
#include <string_view>
#include <thread>
#include <utility>

namespace keenfall::server {

namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using tcp = asio::ip::tcp;
using Fault = beast::error_code;
using Clock = std::chrono::steady_clock;

class Session;

// What a connection is about. What it was admitted to send is as good as being answered: it is not
// ended to make room for another.
enum class Phase { nothing_asked, half_asked, sending_body, answered };

// What all sessions share. Touched by the reading thread alone, but for `is_stopping`.
struct Floor {
  HttpService service;
  HttpLimits limits;
  std::uint16_t port = 0;
  asio::io_context io{1};
  asio::thread_pool answering;
  std::atomic<bool> is_stopping{false};
  std::set<std::shared_ptr<Session>> sessions;
  std::function<void()> when_all_ended;

  Floor(HttpService the_service, const HttpLimits& the_limits)
      : service(std::move(the_service)), limits(the_limits), answering(limits.answering_threads) {}
};

std::string text_of(beast::string_view view) { return {view.data(), view.size()}; }

bool is_known_method(std::string_view method) {
  constexpr std::array<std::string_view, 5> kKnown = {"GET", "HEAD", "POST", "PUT", "DELETE"};
  return std::ranges::count(kKnown, method) > 0;
}

Refusal malformed() {
  return {.status = 400, .kind = "bad_value", .sentence = "This is not a request that HTTP knows."};
}

Refusal too_large_body(std::uint64_t most_bytes) {
  return {.status = 413,
          .kind = "too_large",
          .sentence = most_bytes == 0 ? "Nothing may be sent along with this request."
                                      : "At most " + std::to_string(most_bytes) +
                                            " bytes may be sent along with this request."};
}

// Why the header could not be read; nothing where the other side went away or was too slow.
std::optional<Refusal> refusal_of(const Fault& fault, const HttpLimits& limits) {
  if (fault == http::error::end_of_stream || fault == http::error::partial_message) {
    return std::nullopt;
  }
  if (fault == http::error::header_limit || fault == http::error::buffer_overflow) {
    return Refusal{.status = 431,
                   .kind = "too_large",
                   .sentence = "The header of a request may have " +
                               std::to_string(limits.header_bytes) + " bytes, and this is larger."};
  }
  if (fault == http::error::body_limit) return too_large_body(limits.body_bytes);
  if (fault.category() == make_error_code(http::error::bad_method).category()) return malformed();
  return std::nullopt;
}

// One connection: waits for a request, reads it, has it answered, writes the answer, and again.
class Session : public std::enable_shared_from_this<Session> {
 public:
  Session(Floor& floor, tcp::socket socket)
      : floor_(floor), stream_(std::move(socket)), buffer_(floor.limits.buffer_bytes) {}

  void begin() {
    Fault ignored;
    stream_.socket().set_option(tcp::no_delay(true), ignored);
    wait_for_request();
  }

  [[nodiscard]] bool makes_room() const {
    return phase_ == Phase::nothing_asked || phase_ == Phase::half_asked;
  }
  // Nobody works on an answer, and none is being sent.
  [[nodiscard]] bool is_only_listening() const { return phase_ != Phase::answered; }
  [[nodiscard]] Clock::time_point listening_since() const { return listening_since_; }

  // Whatever it was about to do ends with a fault.
  void close() {
    Fault ignored;
    stream_.socket().close(ignored);
    end();
  }

 private:
  using Parser = http::request_parser<http::string_body>;
  using Response = http::response<http::string_body>;

  // For what the reading thread does next: where that throws, the connection ends and no other.
  template <class Next>
  auto guarded(Next next) {
    return guarded(shared_from_this(), std::move(next));
  }
  template <class Next>
  static auto guarded(std::shared_ptr<Session> self, Next next) {
    return [self = std::move(self), next = std::move(next)](const auto&... outcome) {
      try {
        next(outcome...);
      } catch (const std::exception&) {
        self->close();
      }
    };
  }

  void end() {
    const auto self = shared_from_this();
    floor_.sessions.erase(self);
    if (floor_.sessions.empty() && floor_.when_all_ended) floor_.when_all_ended();
  }

  void wait_for_request() {
    constexpr std::size_t kFirstBytes = 4096;
    phase_ = Phase::nothing_asked;
    listening_since_ = Clock::now();
    parser_.emplace();
    parser_->header_limit(floor_.limits.header_bytes);
    parser_->body_limit(floor_.limits.body_bytes);
    if (buffer_.size() > 0) return read_header();
    stream_.expires_after(floor_.limits.idle_time);
    stream_.async_read_some(buffer_.prepare(kFirstBytes),
                            guarded([this](const Fault& fault, std::size_t count) {
                              if (fault) return close();
                              buffer_.commit(count);
                              read_header();
                            }));
  }

  void read_header() {
    phase_ = Phase::half_asked;
    header_bytes_ = 0;
    stream_.expires_after(floor_.limits.header_time);
    read_more_of_header();
  }

  // Piece by piece, since the parser's own limit is of a piece.
  void read_more_of_header() {
    http::async_read_some(
        stream_, buffer_, *parser_, guarded([this](const Fault& fault, std::size_t count) {
          if (fault) return give_up(fault);
          header_bytes_ += count;
          if (header_bytes_ > floor_.limits.header_bytes) {
            return give_up(http::error::header_limit);
          }
          parser_->is_header_done() ? take_header() : read_more_of_header();
        }));
  }

  void give_up(const Fault& fault) {
    const auto refusal = refusal_of(fault, floor_.limits);
    if (!refusal) return close();
    refuse(*refusal);
  }

  // Nothing more is read of a connection of which one request could not be.
  void refuse(const Refusal& refusal) {
    keeps_open_ = false;
    write(refused(refusal, request_.path));
  }

  void take_header() {
    request_ = {};
    for (const auto& field : parser_->get()) {
      request_.headers.push_back(
          {.name = in_lower_case(text_of(field.name_string())), .text = text_of(field.value())});
    }
    request_.method = text_of(parser_->get().method_string());
    auto target = request_target(
        std::string_view(parser_->get().target().data(), parser_->get().target().size()));
    if (!target) return refuse(malformed());
    request_.path = std::move(target->path);
    request_.query = std::move(target->query);
    if (!is_known_method(request_.method)) {
      return refuse({.status = 501,
                     .kind = "bad_value",
                     .sentence = "Keenfall knows no such method of a request."});
    }
    if (const auto refusal = not_to_be_asked(request_, floor_.port)) return refuse(*refusal);
    admit();
  }

  void admit() {
    keeps_open_ = parser_->keep_alive();
    Admission admission;
    const auto failure = failure_of([&] { admission = floor_.service.admit(request_); });
    if (failure) return refuse(*failure);
    if (admission.refused) {
      keeps_open_ = keeps_open_ && parser_->is_done();
      return write(std::move(*admission.refused));
    }
    const std::uint64_t most_bytes = std::min(admission.body_bytes, floor_.limits.body_bytes);
    const auto stated = parser_->content_length();
    if (stated && *stated > most_bytes) return refuse(too_large_body(most_bytes));
    parser_->body_limit(most_bytes);
    if (parser_->is_done()) return have_it_answered();
    phase_ = Phase::sending_body;
    const bool waits_for_leave = in_lower_case(header_of(request_, "expect")) == "100-continue";
    waits_for_leave ? let_it_be_sent(most_bytes) : read_body(most_bytes);
  }

  void let_it_be_sent(std::uint64_t most_bytes) {
    static constexpr std::string_view kGoOn = "HTTP/1.1 100 Continue\r\n\r\n";
    stream_.expires_after(floor_.limits.writing_time);
    asio::async_write(stream_,
                      asio::buffer(kGoOn.data(), kGoOn.size()),
                      guarded([this, most_bytes](const Fault& fault, std::size_t /*count*/) {
                        if (fault) return close();
                        read_body(most_bytes);
                      }));
  }

  void read_body(std::uint64_t most_bytes) {
    stream_.expires_after(floor_.limits.body_time);
    http::async_read(stream_,
                     buffer_,
                     *parser_,
                     guarded([this, most_bytes](const Fault& fault, std::size_t /*count*/) {
                       if (fault == http::error::body_limit) {
                         return refuse(too_large_body(most_bytes));
                       }
                       if (fault) return give_up(fault);
                       request_.body = std::move(parser_->get().body());
                       have_it_answered();
                     }));
  }

  // Answered by another thread, which then hands the answer back to this one.
  void have_it_answered() {
    phase_ = Phase::answered;
    auto answer = std::make_shared<HttpResponse>();
    asio::post(floor_.answering, [this, self = shared_from_this(), answer]() mutable {
      const bool is_too_late = floor_.is_stopping;
      if (!is_too_late) *answer = answer_made();
      asio::post(floor_.io, guarded(std::move(self), [this, answer, is_too_late] {
                   is_too_late ? close() : write(std::move(*answer));
                 }));
    });
  }

  HttpResponse answer_made() {
    HttpResponse answer;
    const auto failure = failure_of([&] { answer = floor_.service.answer(request_); });
    return failure ? refused(*failure, request_.path) : answer;
  }

  void write(HttpResponse answer) {
    phase_ = Phase::answered;
    keeps_open_ = keeps_open_ && !floor_.is_stopping;
    const auto failure = failure_of([&] { put_together(std::move(answer)); });
    if (failure) put_together(refused(*failure, request_.path));
    send();
  }

  // Throws where a header is larger than the library takes.
  void put_together(HttpResponse answer) {
    response_.emplace();
    response_->result(static_cast<unsigned>(answer.status));
    response_->set(http::field::cache_control, "no-store");
    for (const NamedText& header : strict_headers()) response_->set(header.name, header.text);
    if (!answer.content_type.empty()) {
      response_->set(http::field::content_type, answer.content_type);
    }
    for (const NamedText& header : answer.headers) response_->set(header.name, header.text);
    response_->keep_alive(keeps_open_);
    const bool has_body = answer.status != 204 && answer.status != 304;
    if (has_body) response_->content_length(answer.body.size());
    if (has_body && request_.method != "HEAD") response_->body() = std::move(answer.body);
  }

  void send() {
    stream_.expires_after(floor_.limits.writing_time);
    serializer_.emplace(*response_);
    const auto then = guarded([this](const Fault& fault, std::size_t /*count*/) {
      if (fault) return close();
      serializer_.reset();
      response_.reset();
      request_ = {};
      if (keeps_open_ && !floor_.is_stopping) return wait_for_request();
      take_leave();
    });
    // A header alone where there is no body to send, whatever length it states.
    if (response_->body().empty()) {
      http::async_write_header(stream_, *serializer_, then);
    } else {
      http::async_write(stream_, *serializer_, then);
    }
  }

  // Closing while bytes lie unread would take back the answer before the other side has read it.
  void take_leave() {
    phase_ = Phase::nothing_asked;
    listening_since_ = Clock::now();
    if (floor_.is_stopping) return close();
    Fault fault;
    stream_.socket().shutdown(tcp::socket::shutdown_send, fault);
    if (fault) return close();
    stream_.expires_after(floor_.limits.last_words_time);
    hear_out();
  }

  void hear_out() {
    buffer_.clear();
    stream_.async_read_some(buffer_.prepare(buffer_.max_size()),
                            guarded([this](const Fault& fault, std::size_t /*count*/) {
                              if (fault) return close();
                              hear_out();
                            }));
  }

  Floor& floor_;
  beast::tcp_stream stream_;
  beast::flat_buffer buffer_;
  std::optional<Parser> parser_;
  std::size_t header_bytes_ = 0;
  HttpRequest request_;
  std::optional<Response> response_;
  std::optional<http::response_serializer<http::string_body>> serializer_;
  bool keeps_open_ = false;
  Phase phase_ = Phase::nothing_asked;
  Clock::time_point listening_since_;
};

}  // namespace

struct HttpServer::Inside {
  Floor floor;
  asio::executor_work_guard<asio::io_context::executor_type> work;
  tcp::acceptor acceptor;
  asio::steady_timer pause;
  std::thread reading;
  bool is_accepting = false;  // or will be, after a pause; of the reading thread

  Inside(HttpService service, const HttpLimits& limits)
      : floor(std::move(service), limits),
        work(asio::make_work_guard(floor.io)),
        acceptor(floor.io),
        pause(floor.io) {}

  Fault listen(std::uint16_t port) {
    Fault fault;
    const tcp::endpoint place(asio::ip::address_v4::loopback(), port);
    acceptor.open(place.protocol(), fault);
    if (!fault) acceptor.set_option(tcp::acceptor::reuse_address(true), fault);
    if (!fault) acceptor.bind(place, fault);
    if (!fault) acceptor.listen(static_cast<int>(floor.limits.connections), fault);
    if (!fault) floor.port = acceptor.local_endpoint(fault).port();
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
    const auto session = std::make_shared<Session>(floor, std::move(socket));
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
    std::shared_ptr<Session> longest;
    for (const auto& session : floor.sessions) {
      if (!session->makes_room()) continue;
      const bool is_longer = !longest || session->listening_since() < longest->listening_since();
      if (is_longer) longest = session;
    }
    if (longest) longest->close();
  }

  void close_those(bool (*is_meant)(const Session&)) {
    const auto all = floor.sessions;
    for (const auto& session : all) {
      if (is_meant(*session)) session->close();
    }
  }

  void stop_listening() {
    Fault ignored;
    acceptor.close(ignored);
    pause.cancel();
    close_those([](const Session& session) { return session.is_only_listening(); });
  }

  void end_soon() {
    if (floor.sessions.empty()) return;
    floor.when_all_ended = [this] { pause.cancel(); };
    pause.expires_after(floor.limits.last_words_time);
    pause.async_wait([this](const Fault&) { close_those([](const Session&) { return true; }); });
  }

  void stop() {
    if (floor.is_stopping.exchange(true)) return;
    asio::post(floor.io, [this] { stop_listening(); });
    floor.answering.join();
    asio::post(floor.io, [this] { end_soon(); });
    work.reset();
    if (reading.joinable()) reading.join();
  }
};

base::Result<HttpServer> HttpServer::begun(std::optional<std::uint16_t> port,
                                           HttpService service,
                                           const HttpLimits& limits) {
  base::require(service.admit && service.answer, "a server has somebody who answers");
  auto inside = std::make_unique<Inside>(std::move(service), limits);
  Fault fault = inside->listen(port.value_or(kUsualPort));
  if (fault && !port) fault = inside->listen(0);
  if (fault) {
    const std::string number = std::to_string(port.value_or(kUsualPort));
    return base::failed({.kind = base::ProblemKind::unreadable,
                         .sentence = "Port " + number + " of this machine cannot be listened at: " +
                                     fault.message() + ".",
                         .place = {.column = "--port", .found = number},
                         .accepted = "a port that is free; without --port one is found"});
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

std::uint16_t HttpServer::port() const { return inside_->floor.port; }

void HttpServer::stop() { inside_->stop(); }

}  // namespace keenfall::server
