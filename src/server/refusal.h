// A request that is not answered, and why: said as a problem in JSON under /api/, as a sentence
// elsewhere.
#pragma once

#include "server/http_message.h"

#include <string>
#include <string_view>

namespace keenfall::server {

struct Refusal {
  int status = 400;
  std::string kind;      // one of docs/wire/api.json, such as "not_allowed"
  std::string sentence;  // whole, for a person

  bool operator==(const Refusal&) const = default;
};

// "/api" itself and what lies under it.
[[nodiscard]] bool is_api(std::string_view path);

// path: of the request; empty where it could not be read.
[[nodiscard]] HttpResponse refused(const Refusal& refusal, std::string_view path);

}  // namespace keenfall::server
