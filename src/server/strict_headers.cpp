#include "server/strict_headers.h"

#include <vector>

namespace keenfall::server {

std::span<const NamedText> strict_headers() {
  static const std::vector<NamedText> all = {
      {"Content-Security-Policy",
       "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; "
       "connect-src 'self'; img-src 'self' data:; form-action 'none'; base-uri 'none'; "
       "frame-ancestors 'none'"},
      {"X-Content-Type-Options", "nosniff"},
      {"Referrer-Policy", "no-referrer"},
      {"Cross-Origin-Opener-Policy", "same-origin"},
      {"Cross-Origin-Resource-Policy", "same-origin"}};
  return all;
}

}  // namespace keenfall::server
