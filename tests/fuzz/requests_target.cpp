// Requests: what a stranger's request names is taken apart, and whoever may not ask is refused,
// before anybody looks at what it wants.
//
// The first line is the method and the target as sent, further lines are headers ("name: text"),
// and after an empty line comes the body, which is read as the route of its path reads it.
// A path that comes out means one thing only, and a request that is let through has one Host, which
// is ours, and comes from no other site, but where a person goes to a page.
#include "fuzz_target.h"
#include "planned_requests.h"
#include "sent_bodies.h"
#include "server/answers.h"
#include "server/refusal.h"
#include "server/request_target.h"
#include "server/routes.h"
#include "server/site.h"
#include "server/who_may_ask.h"

#include <algorithm>
#include <cstdlib>
#include <string>
#include <string_view>
#include <utility>

namespace {

using namespace keenfall::server;

constexpr std::uint16_t kPort = 17034;

void must_be(bool condition) {
  if (!condition) std::abort();
}

std::string_view cut_off(std::string_view& rest, std::string_view mark) {
  const std::string_view before = rest.substr(0, rest.find(mark));
  rest.remove_prefix(std::min(before.size() + mark.size(), rest.size()));
  return before;
}

const Routes& routes() {
  static const Routes all = [] {
    const auto says_path = [](const HttpRequest&, const PathParameters& path) {
      for (const auto& [name, text] : path) must_be(!name.empty() && !text.empty());
      return json_answer("{}");
    };
    Routes made;
    made.add("GET", "/api/v1/app", says_path);
    made.add("GET", "/api/v1/trials/{trial}", says_path);
    made.add("PUT", "/api/v1/kit/{sort}/{uid}", says_path);
    made.add("DELETE", "/api/v1/kit/blades/{uid}", says_path);
    return made;
  }();
  return all;
}

void must_mean_one_thing(const std::string& path) {
  must_be(path.starts_with('/'));
  must_be(path.find("//") == std::string::npos && path.find('\\') == std::string::npos);
  must_be(path.find('\0') == std::string::npos && path.find('\n') == std::string::npos);
  for (const std::string_view part : parts_of_path(path)) must_be(part != "." && part != "..");
}

void must_come_from_here(const HttpRequest& request) {
  must_be(std::ranges::count(request.headers, "host", &NamedText::name) == 1);
  const std::string host = in_lower_case(header_of(request, "host"));
  must_be(host == "127.0.0.1:17034" || host == "localhost:17034");
  const bool may_be_visited = request.method == "GET" && !is_api(request.path) &&
                              in_lower_case(header_of(request, "sec-fetch-mode")) == "navigate";
  for (const NamedText& header : request.headers) {
    const bool is_of_another =
        header.name == "sec-fetch-site" && in_lower_case(header.text) == "cross-site";
    must_be(!is_of_another || may_be_visited);
    must_be(header.name != "origin" || in_lower_case(header.text).starts_with("http://"));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  std::string_view input = keenfall::fuzz::as_text(bytes, size);
  std::string_view first = cut_off(input, "\n");
  HttpRequest request;
  request.method = cut_off(first, " ");
  auto target = request_target(first);
  while (!input.empty()) {
    std::string_view line = cut_off(input, "\n");
    if (line.empty()) break;
    const std::string_view name = cut_off(line, ": ");
    request.headers.push_back({.name = in_lower_case(name), .text = std::string(line)});
  }
  if (target) request.path = target->path;
  if (const auto refusal =
          not_to_be_asked(request, {.hosts = {"127.0.0.1", "localhost"}, .port = kPort})) {
    (void)refused(*refusal, request.path);
  } else {
    must_come_from_here(request);
  }
  if (!target) return 0;
  must_mean_one_thing(request.path);
  request.query = std::move(target->query);
  (void)routes().answer(request);
  (void)routes().body_bytes_of(request);
  keenfall::fuzz::plan_as_asked(request.path, std::string(input));
  keenfall::fuzz::body_as_sent(request.path, std::string(input));
  const HttpResponse page = site_answer(request, own_pages());
  must_be(page.status == 200 || page.status == 304 || page.status == 404 || page.status == 405);
  return 0;
}
