// Keenfall's HTTP server: requests in, answers out, at a door of this machine (door.h).
//
// One thread does all reading and writing, so that connections which are idle or send half a
// request cost nothing; a few threads answer, and a few others what may have to wait for a writer.
// Whoever may not ask (who_may_ask.h), asks malformed or asks too much is refused before anybody is
// asked for an answer. HTTP/1.1 (RFC 9112) by Boost.Beast, which is seen in the .cpp alone.
#pragma once

#include "base/result.h"
#include "server/door.h"
#include "server/http_message.h"

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>

namespace keenfall::server {

struct HttpLimits {
  std::uint32_t header_bytes = 8 * 1024;
  std::size_t buffer_bytes =
      64 * 1024;  // read ahead of what is understood; bounds a chunk's size line
  std::uint64_t body_bytes = std::uint64_t{128} * 1024 * 1024;  // whatever is admitted
  // One more ends the connection that has asked for nothing, or for half, the longest; where all
  // are being sent or answered, the new one is.
  std::size_t connections = 512;
  unsigned answering_threads = 4;
  unsigned changing_threads = 4;  // beside them, for requests that may wait for a writer
  std::chrono::milliseconds idle_time{60'000};    // between requests
  std::chrono::milliseconds header_time{10'000};  // from its first byte to its last
  std::chrono::milliseconds body_time{60'000};
  std::chrono::milliseconds writing_time{60'000};
  std::chrono::milliseconds last_words_time{1'000};  // to take an answer in after which it is over
};

// Said of a request when its header is known and its body not yet read.
struct Admission {
  std::uint64_t body_bytes = 0;  // how large the body may be
  // While its body is being sent it may be ended for another, as one that has asked for half.
  bool makes_room = false;
  std::optional<HttpResponse> refused = std::nullopt;  // the answer, without reading the body
  // Its answer may have to wait until another has written: as many as wait, the others are
  // answered.
  bool may_wait_for_a_writer = false;
};

// Both are called from several threads or from the reading one. What they throw is answered as
// failure.h says.
struct HttpService {
  std::function<Admission(const HttpRequest& without_body)> admit;  // quick: others wait meanwhile
  std::function<HttpResponse(const HttpRequest&)> answer;
};

class HttpServer {
 public:
  // Begins to serve. Fails where the port asked for is taken or not ours to take, and where the
  // certificate cannot be used.
  [[nodiscard]] static base::Result<HttpServer> begun(const Door& door,
                                                      HttpService service,
                                                      const HttpLimits& limits = {});

  HttpServer(HttpServer&&) noexcept;
  HttpServer& operator=(HttpServer&&) noexcept;
  HttpServer(const HttpServer&) = delete;
  HttpServer& operator=(const HttpServer&) = delete;
  ~HttpServer();  // stops

  [[nodiscard]] std::uint16_t port() const;

  // Answers that are being made are still sent, for a moment; then all threads have ended. From any
  // thread but those that answer.
  void stop();

 private:
  struct Inside;
  explicit HttpServer(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace keenfall::server
