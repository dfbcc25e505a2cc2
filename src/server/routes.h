// Which requests of the API there are, and who answers each.
//
// A pattern is a path whose parts in braces stand for anything but nothing:
// "/api/v1/trials/{trial}". Of two that fit, the one with fewer braces is meant. HEAD is answered
// as GET.
#pragma once

#include "server/http_message.h"

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <vector>

namespace keenfall::server {

using PathParameters = std::map<std::string, std::string>;  // "trial": what stands in its place
using RouteHandler = std::function<HttpResponse(const HttpRequest&, const PathParameters&)>;

inline constexpr std::uint64_t kUsualBodyBytes = std::uint64_t{1024} * 1024;
inline constexpr std::uint64_t kTableBodyBytes = std::uint64_t{128} * 1024 * 1024;

// What a route does, beyond answering. As its method says: one that is not GET may change the
// notebook, and so may wait until another has written to it. reads: it never does.
enum class RouteDoes { as_its_method_says, reads };

struct RouteRules {
  std::uint64_t body_bytes = kUsualBodyBytes;
  RouteDoes does = RouteDoes::as_its_method_says;
};

class Routes {
 public:
  // A method and a pattern that are there already are a fault of ours. What a handler throws is
  // answered as failure.h says.
  void add(const std::string& method,
           const std::string& pattern,
           RouteHandler handler,
           const RouteRules& rules = {});

  // Never throws. 404 where no pattern fits, 405 with Allow where one does for other methods.
  [[nodiscard]] HttpResponse answer(const HttpRequest& request) const;

  // How large a body the request's route takes; the usual where there is none.
  [[nodiscard]] std::uint64_t body_bytes_of(const HttpRequest& request) const;

  // Would its answer wait for a writer? False where there is no such route.
  [[nodiscard]] bool may_wait_for_a_writer(const HttpRequest& request) const;

  // "GET /api/v1/app", in the order they were added.
  [[nodiscard]] std::vector<std::string> listed() const;

 private:
  struct Route {
    std::string method;
    std::string pattern;
    RouteHandler handler;
    RouteRules rules;
  };
  struct Meant {
    const Route* route = nullptr;
    PathParameters parameters;
    std::vector<std::string> allowed;  // methods of all patterns that fit
  };

  [[nodiscard]] Meant meant_by(const HttpRequest& request) const;

  std::vector<Route> all_;
};

}  // namespace keenfall::server
