// For tests: a server that says back what it was asked, and bytes on a socket to ask it with.
#pragma once

#include "server/http_server.h"
#include "server/raw_client_test.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <string>
#include <utility>

namespace keenfall::server::testing {

inline constexpr std::uint64_t kBodyBytes = 1000;

// Says back what it was asked.
inline HttpService echo() {
  return {.admit = [](const HttpRequest&) { return Admission{.body_bytes = kBodyBytes}; },
          .answer =
              [](const HttpRequest& request) {
                std::string words = request.method + " " + request.path;
                for (const auto& [name, text] : request.query) words += " " + name + "=" + text;
                return HttpResponse{.content_type = "text/plain",
                                    .body = words + "|" + request.body};
              }};
}

class EchoingServer : public ::testing::Test {
 protected:
  // Of a free port.
  static HttpServer begun(const HttpLimits& limits = {}, HttpService service = echo()) {
    return std::move(HttpServer::begun({.port = 0}, std::move(service), limits).value());
  }

  RawAnswer told(const std::string& bytes) { return answer_to(server_.port(), bytes); }
  RawAnswer asked(const std::string& begin,
                  const std::string& more_lines = "",
                  const std::string& body = "") {
    return told(request_of(begin, server_.port(), more_lines, body));
  }

  HttpServer server_ = begun();
};

}  // namespace keenfall::server::testing
