// For tests: a client that sends whatever bytes it is told to, and reads what comes back.
#pragma once

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <chrono>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

namespace keenfall::server::testing {

struct RawAnswer {
  int status = 0;    // 0: nothing came
  std::string head;  // with its first line, in lower case
  std::string body;
  bool is_last = false;  // the other side closed before or behind it
};

class RawClient {
 public:
  // address: on this machine, in network order as inet_pton reads it.
  explicit RawClient(std::uint16_t port, const char* address = "127.0.0.1")
      : socket_(socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)) {
    sockaddr_in place{};
    place.sin_family = AF_INET;
    place.sin_port = htons(port);
    inet_pton(AF_INET, address, &place.sin_addr);
    is_connected_ = connect(socket_, reinterpret_cast<const sockaddr*>(&place), sizeof place) == 0;
  }
  RawClient(RawClient&& other) noexcept
      : socket_(std::exchange(other.socket_, -1)),
        is_connected_(other.is_connected_),
        read_(std::move(other.read_)) {}
  RawClient(const RawClient&) = delete;
  RawClient& operator=(const RawClient&) = delete;
  RawClient& operator=(RawClient&&) = delete;
  ~RawClient() {
    if (socket_ >= 0) close(socket_);
  }

  [[nodiscard]] bool is_connected() const { return is_connected_; }

  // False where the other side takes no more.
  bool say(std::string_view bytes) {
    while (!bytes.empty()) {
      const ssize_t count = send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
      if (count <= 0) return false;
      bytes.remove_prefix(static_cast<std::size_t>(count));
    }
    return true;
  }

  void say_no_more() { shutdown(socket_, SHUT_WR); }

  // The next answer, but a bare "100 Continue"; of a HEAD it is the head alone.
  RawAnswer heard(bool has_body = true) {
    RawAnswer answer;
    while (read_.find("\r\n\r\n") == std::string::npos) {
      if (!read_some()) return {.is_last = true};
    }
    const std::size_t end = read_.find("\r\n\r\n") + 4;
    answer.head = lower(read_.substr(0, end));
    answer.status = number_after(answer.head, "http/1.1 ");
    read_.erase(0, end);
    const int stated = number_after(answer.head, "content-length: ");
    const std::size_t length = has_body ? static_cast<std::size_t>(std::max(stated, 0)) : 0;
    while (read_.size() < length && read_some()) continue;
    answer.body = read_.substr(0, length);
    read_.erase(0, length);
    answer.is_last = answer.head.find("connection: close") != std::string::npos;
    return answer;
  }

  // Did it close, with nothing more said, within ten seconds?
  bool hears_it_close() { return read_.empty() && !read_some() && is_closed_; }

 private:
  static std::string lower(std::string text) {
    std::ranges::transform(
        text, text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
  }

  static int number_after(const std::string& text, const std::string& words) {
    const std::size_t at = text.find(words);
    if (at == std::string::npos) return -1;
    int number = -1;
    std::from_chars(text.data() + at + words.size(), text.data() + text.size(), number);
    return number;
  }

  bool read_some() {
    constexpr int kPatienceMs = 10'000;
    pollfd waiting{.fd = socket_, .events = POLLIN, .revents = 0};
    if (poll(&waiting, 1, kPatienceMs) <= 0) return false;
    std::array<char, 65536> buffer{};
    const ssize_t count = recv(socket_, buffer.data(), buffer.size(), 0);
    is_closed_ = count <= 0;
    if (count > 0) read_.append(buffer.data(), static_cast<std::size_t>(count));
    return count > 0;
  }

  int socket_ = -1;
  bool is_connected_ = false;
  bool is_closed_ = false;
  std::string read_;
};

// "GET /path" with a right Host, and more header lines, each with its "\r\n".
inline std::string request_of(const std::string& begin,
                              std::uint16_t port,
                              const std::string& more_lines = "",
                              const std::string& body = "") {
  return begin + " HTTP/1.1\r\nHost: 127.0.0.1:" + std::to_string(port) + "\r\n" + more_lines +
         "\r\n" + body;
}

// What one connection with these bytes alone is answered.
inline RawAnswer answer_to(std::uint16_t port, const std::string& bytes) {
  RawClient client(port);
  client.say(bytes);
  return client.heard();
}

inline std::chrono::milliseconds time_of(const auto& work) {
  const auto began = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now() -
                                                               began);
}

}  // namespace keenfall::server::testing
