#include "server/http_session.h"

#include "server/failure.h"
#include "server/request_target.h"
#include "server/strict_headers.h"
#include "server/who_may_ask.h"

#include <boost/asio/post.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core.hpp>

#include <algorithm>
#include <array>
#include <exception>
#include <string_view>

namespace keenfall::server {

namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using tcp = asio::ip::tcp;

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
std::optional<Refusal> refusal_of(const beast::error_code& fault, const HttpLimits& limits) {
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

// How a connection that came there may be asked.
OwnAddress own_address_of(const tcp::socket& socket, const HttpFloor& floor) {
  beast::error_code fault;
  const tcp::endpoint here = socket.local_endpoint(fault);
  OwnAddress own{.is_encrypted = floor.tls.has_value(),
                 .hosts = {here.address().to_string()},
                 .port = here.port()};
  if (here.address().is_loopback()) own.hosts.emplace_back("localhost");
  own.hosts.insert(own.hosts.end(), floor.names.begin(), floor.names.end());
  return own;
}

}  // namespace

HttpSession::HttpSession(HttpFloor& floor, tcp::socket socket)
    : floor_(floor),
      line_(std::move(socket), floor.tls ? &*floor.tls : nullptr),
      own_(own_address_of(line_.tcp().socket(), floor)),
      buffer_(floor.limits.buffer_bytes) {}

bool HttpSession::makes_room() const {
  return phase_ == Phase::nothing_asked || phase_ == Phase::half_asked;
}

void HttpSession::close() {
  Fault ignored;
  line_.tcp().socket().close(ignored);
  end();
}

// For what the reading thread does next: where that throws, the connection ends and no other.
template <class Next>
auto HttpSession::guarded(Next next) {
  return guarded(shared_from_this(), std::move(next));
}
template <class Next>
auto HttpSession::guarded(std::shared_ptr<HttpSession> self, Next next) {
  return [self = std::move(self), next = std::move(next)](const auto&... outcome) {
    try {
      next(outcome...);
    } catch (const std::exception&) {
      self->close();
    }
  };
}

void HttpSession::begin() {
  Fault ignored;
  line_.tcp().socket().set_option(tcp::no_delay(true), ignored);
  line_.is_encrypted() ? shake_hands() : wait_for_request();
}

void HttpSession::shake_hands() {
  listen_anew();
  line_.tcp().expires_after(floor_.limits.header_time);
  line_.async_handshake(
      guarded([this](const Fault& fault) { fault ? close() : wait_for_request(); }));
}

void HttpSession::listen_anew() {
  phase_ = Phase::nothing_asked;
  listening_since_ = std::chrono::steady_clock::now();
}

void HttpSession::end() {
  const auto self = shared_from_this();
  floor_.sessions.erase(self);
  if (floor_.sessions.empty() && floor_.when_all_ended) floor_.when_all_ended();
}

void HttpSession::wait_for_request() {
  constexpr std::size_t kFirstBytes = 4096;
  listen_anew();
  parser_.emplace();
  parser_->header_limit(floor_.limits.header_bytes);
  parser_->body_limit(floor_.limits.body_bytes);
  if (buffer_.size() > 0) return read_header();
  line_.tcp().expires_after(floor_.limits.idle_time);
  line_.async_read_some(buffer_.prepare(kFirstBytes),
                        guarded([this](const Fault& fault, std::size_t count) {
                          if (fault) return close();
                          buffer_.commit(count);
                          read_header();
                        }));
}

void HttpSession::read_header() {
  phase_ = Phase::half_asked;
  header_bytes_ = 0;
  line_.tcp().expires_after(floor_.limits.header_time);
  read_more_of_header();
}

// Piece by piece, since the parser's own limit is of a piece.
void HttpSession::read_more_of_header() {
  http::async_read_some(
      line_, buffer_, *parser_, guarded([this](const Fault& fault, std::size_t count) {
        if (fault) return give_up(fault);
        header_bytes_ += count;
        if (header_bytes_ > floor_.limits.header_bytes) {
          return give_up(http::error::header_limit);
        }
        parser_->is_header_done() ? take_header() : read_more_of_header();
      }));
}

void HttpSession::give_up(const Fault& fault) {
  const auto refusal = refusal_of(fault, floor_.limits);
  if (!refusal) return close();
  refuse(*refusal);
}

// Nothing more is read of a connection of which one request could not be.
void HttpSession::refuse(const Refusal& refusal) {
  keeps_open_ = false;
  write(refused(refusal, request_.path));
}

void HttpSession::take_header() {
  request_ = {};
  request_.from = line_.from();
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
  if (const auto refusal = not_to_be_asked(request_, own_)) return refuse(*refusal);
  admit();
}

void HttpSession::admit() {
  keeps_open_ = parser_->keep_alive();
  Admission admission;
  const auto failure = failure_of([&] { admission = floor_.service.admit(request_); });
  if (failure) return refuse(*failure);
  if (admission.refused) {
    keeps_open_ = keeps_open_ && parser_->is_done();
    return write(std::move(*admission.refused));
  }
  may_wait_for_a_writer_ = admission.may_wait_for_a_writer;
  const std::uint64_t most_bytes = std::min(admission.body_bytes, floor_.limits.body_bytes);
  const auto stated = parser_->content_length();
  if (stated && *stated > most_bytes) return refuse(too_large_body(most_bytes));
  parser_->body_limit(most_bytes);
  if (parser_->is_done()) return have_it_answered();
  phase_ = admission.makes_room ? Phase::half_asked : Phase::sending_body;
  const bool waits_for_leave = in_lower_case(header_of(request_, "expect")) == "100-continue";
  waits_for_leave ? let_it_be_sent(most_bytes) : read_body(most_bytes);
}

void HttpSession::let_it_be_sent(std::uint64_t most_bytes) {
  static constexpr std::string_view kGoOn = "HTTP/1.1 100 Continue\r\n\r\n";
  line_.tcp().expires_after(floor_.limits.writing_time);
  asio::async_write(line_,
                    asio::buffer(kGoOn.data(), kGoOn.size()),
                    guarded([this, most_bytes](const Fault& fault, std::size_t /*count*/) {
                      if (fault) return close();
                      read_body(most_bytes);
                    }));
}

void HttpSession::read_body(std::uint64_t most_bytes) {
  line_.tcp().expires_after(floor_.limits.body_time);
  http::async_read(line_,
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
void HttpSession::have_it_answered() {
  phase_ = Phase::answered;
  request_.came_at = std::chrono::steady_clock::now();
  auto answer = std::make_shared<HttpResponse>();
  asio::post(may_wait_for_a_writer_ ? floor_.changing : floor_.answering,
             [this, self = shared_from_this(), answer]() mutable {
               const bool is_too_late = floor_.is_stopping;
               if (!is_too_late) *answer = answer_made();
               asio::post(floor_.io, guarded(std::move(self), [this, answer, is_too_late] {
                            is_too_late ? close() : write(std::move(*answer));
                          }));
             });
}

HttpResponse HttpSession::answer_made() {
  HttpResponse answer;
  const auto failure = failure_of([&] { answer = floor_.service.answer(request_); });
  return failure ? refused(*failure, request_.path) : answer;
}

void HttpSession::write(HttpResponse answer) {
  phase_ = Phase::answered;
  keeps_open_ = keeps_open_ && !floor_.is_stopping;
  const auto failure = failure_of([&] { put_together(std::move(answer)); });
  if (failure) put_together(refused(*failure, request_.path));
  send();
}

// Throws where a header is larger than the library takes.
void HttpSession::put_together(HttpResponse answer) {
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

void HttpSession::send() {
  line_.tcp().expires_after(floor_.limits.writing_time);
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
    http::async_write_header(line_, *serializer_, then);
  } else {
    http::async_write(line_, *serializer_, then);
  }
}

// Closing while bytes lie unread would take back the answer before the other side has read it.
void HttpSession::take_leave() {
  listen_anew();
  if (floor_.is_stopping) return close();
  Fault fault;
  line_.tcp().socket().shutdown(tcp::socket::shutdown_send, fault);
  if (fault) return close();
  line_.tcp().expires_after(floor_.limits.last_words_time);
  hear_out();
}

void HttpSession::hear_out() {
  buffer_.clear();
  line_.async_read_some(buffer_.prepare(buffer_.max_size()),
                        guarded([this](const Fault& fault, std::size_t /*count*/) {
                          if (fault) return close();
                          hear_out();
                        }));
}

}  // namespace keenfall::server
