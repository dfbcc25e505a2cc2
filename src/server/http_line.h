// A connection's stream, in the clear or by TLS, as Boost.Beast reads and writes one. Private to
// the folder.
#pragma once

#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/ssl/context.hpp>
#include <boost/asio/ssl/stream_base.hpp>
#include <boost/beast/core/error.hpp>
#include <boost/beast/core/tcp_stream.hpp>
#include <boost/beast/ssl/ssl_stream.hpp>

#include <memory>
#include <optional>
#include <string>
#include <utility>

namespace keenfall::server {

class HttpLine {
 public:
  using Tcp = boost::beast::tcp_stream;
  using executor_type = Tcp::executor_type;

  // tls: as whom it presents itself; nullptr: in the clear.
  HttpLine(boost::asio::ip::tcp::socket socket, boost::asio::ssl::context* tls) {
    if (tls != nullptr) {
      by_tls_ = std::make_unique<boost::beast::ssl_stream<Tcp>>(Tcp(std::move(socket)), *tls);
    } else {
      clear_.emplace(std::move(socket));
    }
  }

  [[nodiscard]] bool is_encrypted() const { return by_tls_ != nullptr; }
  [[nodiscard]] Tcp& tcp() { return by_tls_ ? by_tls_->next_layer() : *clear_; }
  // Address of the other side; empty where it is gone.
  [[nodiscard]] std::string from() {
    boost::beast::error_code fault;
    const auto there = tcp().socket().remote_endpoint(fault);
    return fault ? std::string() : there.address().to_string();
  }
  executor_type get_executor() { return tcp().get_executor(); }

  template <class Handler>
  void async_handshake(Handler&& handler) {
    by_tls_->async_handshake(boost::asio::ssl::stream_base::server, std::forward<Handler>(handler));
  }
  template <class Buffers, class Handler>
  void async_read_some(const Buffers& buffers, Handler&& handler) {
    if (by_tls_) return by_tls_->async_read_some(buffers, std::forward<Handler>(handler));
    clear_->async_read_some(buffers, std::forward<Handler>(handler));
  }
  template <class Buffers, class Handler>
  void async_write_some(const Buffers& buffers, Handler&& handler) {
    if (by_tls_) return by_tls_->async_write_some(buffers, std::forward<Handler>(handler));
    clear_->async_write_some(buffers, std::forward<Handler>(handler));
  }

 private:
  std::optional<Tcp> clear_;
  std::unique_ptr<boost::beast::ssl_stream<Tcp>> by_tls_;
};

}  // namespace keenfall::server
