// The app as it is served, with a notebook open, while hundreds hold connections that say nothing
// or half of something.
#include "server/app.h"
#include "server/app_parts.h"
#include "server/raw_client_test.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::server {
namespace {

using testing::answer_to;
using testing::RawAnswer;
using testing::RawClient;
using testing::request_of;
using testing::time_of;
using namespace std::chrono_literals;

class ACrowdedApp : public ::testing::Test {
 protected:
  ACrowdedApp() {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    add_app_routes(
        {.routes = app_.routes(), .works = app_.works(), .open = open_, .ask_to_stop = [] {}});
    (void)app_.begin().value();
  }
  ~ACrowdedApp() override {
    app_.stop();
    std::filesystem::remove_all(folder_);
  }

  RawAnswer asked(const std::string& begin, const std::string& body = "") {
    return answer_to(app_.port(),
                     request_of(begin,
                                app_.port(),
                                "X-Keenfall-Key: " + app_.key() +
                                    "\r\nContent-Length: " + std::to_string(body.size()) + "\r\n",
                                body));
  }

  std::chrono::milliseconds slowest_of(const std::vector<std::string>& requests) {
    std::chrono::milliseconds slowest{0};
    for (const std::string& request : requests) {
      RawAnswer answer;
      slowest = std::max(slowest, time_of([&] { answer = asked(request); }));
      EXPECT_EQ(answer.status, 200) << request;
    }
    return slowest;
  }

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

  std::filesystem::path folder_ =
      std::filesystem::temp_directory_path() / ("keenfall_crowd_" + std::to_string(getpid()));
  workbench::OpenApp open_{{.program_version = "0.1.0",
                            .folder = folder_.string(),
                            .notebook = std::nullopt,
                            .who = "R.",
                            .machine_words = "bench-2, process 4711",
                            .utc_now = [] { return std::string("2026-11-26T12:00:00Z"); }}};
  App app_{{.port = 0}};
};

TEST_F(ACrowdedApp, AnswersPagesAndItsApiAtOnce) {
  ASSERT_EQ(asked("POST /api/v1/notebooks", R"({"how": "demo"})").status, 200);
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
