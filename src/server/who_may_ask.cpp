#include "server/who_may_ask.h"

#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::server {

namespace {

std::vector<std::string> all_of_name(const HttpRequest& request, std::string_view name) {
  std::vector<std::string> all;
  for (const NamedText& header : request.headers) {
    if (header.name == name) all.push_back(in_lower_case(header.text));
  }
  return all;
}

// Without the port where it is the one a browser leaves out.
bool is_own_host(std::string_view host, const OwnAddress& own) {
  const std::uint16_t left_out = own.is_encrypted ? 443 : 80;
  return std::ranges::any_of(own.hosts, [&](const std::string& name) {
    if (own.port == left_out && host == name) return true;
    return host == name + ":" + std::to_string(own.port);
  });
}

bool is_own_origin(std::string_view origin, const OwnAddress& own) {
  const std::string_view scheme = own.is_encrypted ? "https://" : "http://";
  return origin.starts_with(scheme) && is_own_host(origin.substr(scheme.size()), own);
}

Refusal foreign(const std::string& sentence) {
  return {.status = 403, .kind = "not_allowed", .sentence = sentence};
}

}  // namespace

// A page that is shown in the place of another, and that holds nothing of a notebook: those it asks
// for with its key come from itself.
bool is_mere_visit(const HttpRequest& request) {
  return request.method == "GET" && !is_api(request.path) &&
         all_of_name(request, "sec-fetch-mode") == std::vector<std::string>{"navigate"} &&
         all_of_name(request, "sec-fetch-dest") == std::vector<std::string>{"document"};
}

std::optional<Refusal> not_to_be_asked(const HttpRequest& request, const OwnAddress& own) {
  const auto hosts = all_of_name(request, "host");
  if (hosts.size() != 1) {
    return Refusal{.status = 400,
                   .kind = "bad_value",
                   .sentence = "A request must name exactly one host, and this one names " +
                               std::to_string(hosts.size()) + "."};
  }
  if (!is_own_host(hosts.front(), own)) {
    return foreign("Keenfall answers only under its own address, " + origin_of(own) + "/.");
  }
  const auto origins = all_of_name(request, "origin");
  const bool is_own =
      origins.empty() || (origins.size() == 1 && is_own_origin(origins.front(), own));
  if (!is_own) return foreign("Keenfall answers only its own pages, and this is another's.");
  for (const std::string& site : all_of_name(request, "sec-fetch-site")) {
    if (site != "same-origin" && site != "none" && !is_mere_visit(request)) {
      return foreign(
          "Keenfall does not answer requests that come from another site. Open the address that "
          "was printed.");
    }
  }
  const auto codings = all_of_name(request, "transfer-encoding");
  const bool is_plain = codings.empty() || (codings.size() == 1 && codings.front() == "chunked");
  if (!is_plain) {
    return Refusal{.status = 400,
                   .kind = "bad_value",
                   .sentence = "A body may be sent whole or chunked, and in no other coding."};
  }
  return std::nullopt;
}

}  // namespace keenfall::server
