#include "server/routes.h"

#include "base/require.h"
#include "server/answers.h"
#include "server/failure.h"
#include "server/request_target.h"
#include "wire/problems_json.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>

namespace keenfall::server {

namespace {

bool is_in_braces(std::string_view part) { return part.starts_with('{') && part.ends_with('}'); }

// What stands in place of the braces; nothing where the pattern does not fit.
std::optional<PathParameters> fitted(std::string_view pattern, std::string_view path) {
  const auto wanted = parts_of_path(pattern);
  const auto given = parts_of_path(path);
  if (wanted.size() != given.size()) return std::nullopt;
  PathParameters parameters;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    if (is_in_braces(wanted[i]) && !given[i].empty()) {
      parameters.emplace(wanted[i].substr(1, wanted[i].size() - 2), given[i]);
    } else if (wanted[i] != given[i]) {
      return std::nullopt;
    }
  }
  return parameters;
}

HttpResponse not_that_way(const std::vector<std::string>& allowed) {
  constexpr int kMethodNotAllowed = 405;
  std::string listed;
  for (const std::string& method : allowed) listed += (listed.empty() ? "" : ", ") + method;
  HttpResponse answer =
      json_answer(wire::refusal_to_json("bad_value", "This can only be asked with " + listed + "."),
                  kMethodNotAllowed);
  answer.headers.push_back({.name = "Allow", .text = listed});
  return answer;
}

}  // namespace

void Routes::add(const std::string& method,
                 const std::string& pattern,
                 RouteHandler handler,
                 const RouteRules& rules) {
  const bool is_there = std::ranges::any_of(
      all_, [&](const Route& route) { return route.method == method && route.pattern == pattern; });
  base::require(!is_there, "a route is there once");
  base::require(handler != nullptr, "a route has somebody who answers");
  all_.push_back({method, pattern, std::move(handler), rules});
}

Routes::Meant Routes::meant_by(const HttpRequest& request) const {
  Meant meant;
  std::optional<std::size_t> fewest_braces;
  for (const Route& route : all_) {
    auto parameters = fitted(route.pattern, request.path);
    if (!parameters) continue;
    const bool has_it = std::ranges::count(meant.allowed, route.method) > 0;
    if (!has_it) meant.allowed.push_back(route.method);
    const bool is_asked =
        route.method == request.method || (route.method == "GET" && request.method == "HEAD");
    if (!is_asked || (fewest_braces && *fewest_braces <= parameters->size())) continue;
    fewest_braces = parameters->size();
    meant.route = &route;
    meant.parameters = std::move(*parameters);
  }
  return meant;
}

HttpResponse Routes::answer(const HttpRequest& request) const {
  const Meant meant = meant_by(request);
  if (meant.allowed.empty()) return not_found("There is nothing at " + request.path + ".");
  if (meant.route == nullptr) return not_that_way(meant.allowed);
  HttpResponse answer;
  const auto failure =
      failure_of([&] { answer = meant.route->handler(request, meant.parameters); });
  return failure ? refused(*failure, request.path) : answer;
}

std::uint64_t Routes::body_bytes_of(const HttpRequest& request) const {
  const Meant meant = meant_by(request);
  return meant.route == nullptr ? kUsualBodyBytes : meant.route->rules.body_bytes;
}

bool Routes::may_wait_for_a_writer(const HttpRequest& request) const {
  const Meant meant = meant_by(request);
  return meant.route != nullptr && meant.route->method != "GET" &&
         meant.route->rules.does != RouteDoes::reads;
}

std::vector<std::string> Routes::listed() const {
  std::vector<std::string> listed;
  for (const Route& route : all_) listed.push_back(route.method + " " + route.pattern);
  return listed;
}

}  // namespace keenfall::server
