// The headers that every answer has: what a browser may do with it, which is as little as the pages
// need.
#pragma once

#include "server/http_message.h"

#include <span>

namespace keenfall::server {

[[nodiscard]] std::span<const NamedText> strict_headers();

}  // namespace keenfall::server
