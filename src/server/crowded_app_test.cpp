// The app as it is served, with a notebook open, while hundreds hold connections that say nothing
// or half of something.
#include "server/served_app_test.h"

#include <algorithm>
#include <string>
#include <vector>

namespace keenfall::server {
namespace {

using testing::RawClient;
using testing::request_of;
using namespace std::chrono_literals;

class ACrowdedApp : public testing::ServedApp {
 protected:
  std::vector<RawClient> crowd(int each) {
    std::vector<RawClient> crowd;
    const std::string key = "X-Keenfall-Key: " + app_.key() + "\r\nContent-Length: 99\r\n";
    for (int i = 0; i < each; ++i) {
      crowd.emplace_back(app_.port());  // says nothing
      crowd.emplace_back(app_.port());
      crowd.back().say(i % 2 == 0 ? "GET /api/v1/home HTT"
                                  : request_of("POST /api/v1/trials", app_.port(), key, "{\"na"));
    }
    return crowd;
  }
};

TEST_F(ACrowdedApp, AnswersPagesAndItsApiAtOnce) {
  const auto home = nlohmann::json::parse(asked("GET /api/v1/home").body);
  const std::string trial = home["trials"][0]["uid"];
  const std::vector<std::string> requests{
      "GET /", "GET /api/v1/home", "GET /api/v1/trials/" + trial, "GET /api/v1/kit"};
  const auto alone = slowest_of(requests);

  const std::vector<RawClient> both = crowd(200);
  const auto crowded = slowest_of(requests);

  // A build that watches itself is slow when alone, too.
  EXPECT_LT(crowded, std::max(200ms, 3 * alone));
}

}  // namespace
}  // namespace keenfall::server
