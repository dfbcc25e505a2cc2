// What stands between method and version in a request: a path and a query, taken apart.
//
// In: "/api/v1/trials/7f?with_struck=1", as sent. Out: path and query decoded, in UTF-8. Nothing
// where it is not of that form: no "/" in front, a "%" that is not followed by two hexadecimal
// digits, bytes that are not UTF-8, control characters, a "/" or "\" written with "%", an empty
// part, "." or "..". So a path that comes out means one thing only, however it was written.
// RFC 3986, sections 2.1, 3.3 and 3.4; in a query "+" is a space, as forms send it.
#pragma once

#include "server/http_message.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::server {

struct RequestTarget {
  std::string path;
  std::vector<NamedText> query;

  bool operator==(const RequestTarget&) const = default;
};

[[nodiscard]] std::optional<RequestTarget> request_target(std::string_view written);

// The parts between the slashes of a path: "/a/b" has two, "/" has none, "/a/" has "a" and "".
[[nodiscard]] std::vector<std::string_view> parts_of_path(std::string_view path);

}  // namespace keenfall::server
