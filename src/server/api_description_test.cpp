// docs/wire/api.json and the routes: each says what the other does.
#include "server/asked_app_test.h"

#include "server/bench_door.h"
#include "server/work_routes.h"

#include <algorithm>
#include <cctype>
#include <set>

namespace keenfall::server {
namespace {

using testing::json;

class ApiDescription : public testing::AskedApp {};

std::set<std::string> described() {
  std::set<std::string> all;
  const json api = wire::testing::schema_named("api.json");
  for (const auto& [path, methods] : api["paths"].items()) {
    for (const auto& [method, what] : methods.items()) {
      std::string capital = method;
      std::ranges::transform(capital, capital.begin(), [](unsigned char letter) {
        return static_cast<char>(std::toupper(letter));
      });
      all.insert(capital + " " + path);
    }
  }
  return all;
}

TEST_F(ApiDescription, HasEveryRouteAndEveryRouteIsAnswered) {
  add_work_routes(routes_, works_);
  std::set<std::string> answered;
  for (const std::string& route : routes_.listed()) answered.insert(route);
  const BenchDoor door(open_, {});
  for (const std::string& route : door.routes().listed()) answered.insert(route);

  for (const std::string& route : answered) EXPECT_TRUE(described().contains(route)) << route;
  for (const std::string& route : described()) EXPECT_TRUE(answered.contains(route)) << route;
}

}  // namespace
}  // namespace keenfall::server
