// A request and an answer as values: what the server hands to whoever answers, and gets back.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::server {

// Of a query or a header.
struct NamedText {
  std::string name;
  std::string text;

  bool operator==(const NamedText&) const = default;
};

struct HttpRequest {
  std::string method;  // "GET", "HEAD", "POST", "PUT" or "DELETE"
  std::string path;    // decoded, UTF-8, begins with "/"; no "." or ".." and no "//" in it
  std::vector<NamedText> query;    // decoded, UTF-8, in the order given
  std::vector<NamedText> headers;  // names in lower case
  std::string body;                // bytes
  std::string from = {};           // address of the other side, "192.168.1.9"
  // When all of it was there, to be answered.
  std::chrono::steady_clock::time_point came_at = std::chrono::steady_clock::now();
};

struct HttpResponse {
  int status = 200;
  std::string content_type = {};
  std::string body = {};
  std::vector<NamedText> headers = {};  // besides those every answer has (strict_headers.h)
};

// The first header of this name; empty where there is none.
[[nodiscard]] std::string_view header_of(const HttpRequest& request,
                                         std::string_view name_in_lower_case);
// What the query says under this name, the first time.
[[nodiscard]] std::optional<std::string> queried(const HttpRequest& request, std::string_view name);

// A to Z alone, as names of headers and hosts are compared.
[[nodiscard]] std::string in_lower_case(std::string_view text);

}  // namespace keenfall::server
