#include "server/strict_headers.h"

#include <vector>

namespace keenfall::server {

// Inline style is refused but for one: the rules that Observable Plot puts into each picture, named
// by their SHA-256 (web/test/policy.test.ts holds it to them).
std::span<const NamedText> strict_headers() {
  static const std::vector<NamedText> all = {
      {"Content-Security-Policy",
       "default-src 'none'; script-src 'self'; style-src 'self' "
       "'sha256-jSYQUrW7J0b3jPqhZP9C2Xh1PyJKHKXd4s0fpGGKrww='; "
       "connect-src 'self'; img-src 'self' data:; form-action 'none'; base-uri 'none'; "
       "frame-ancestors 'none'"},
      {"X-Content-Type-Options", "nosniff"},
      {"Referrer-Policy", "no-referrer"},
      {"Cross-Origin-Opener-Policy", "same-origin"},
      {"Cross-Origin-Resource-Policy", "same-origin"}};
  return all;
}

}  // namespace keenfall::server
