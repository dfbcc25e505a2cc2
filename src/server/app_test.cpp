// The app as it is served: pages to everybody here, the API to whoever has the key.
#include "server/app.h"

#include "server/answers.h"
#include "server/raw_client_test.h"
#include "server/work_routes.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <chrono>
#include <string>
#include <thread>

namespace keenfall::server {
namespace {

using testing::answer_to;
using ::testing::HasSubstr;
using testing::RawAnswer;
using testing::RawClient;
using testing::request_of;
using ::testing::StartsWith;
using testing::time_of;
using namespace std::chrono_literals;
using nlohmann::json;

class AnApp : public ::testing::Test {
 protected:
  AnApp() {
    app_.routes().add("GET", "/api/v1/app", [](const HttpRequest&, const PathParameters&) {
      return json_answer("{}\n");
    });
    app_.routes().add(
        "POST", "/api/v1/echo", [](const HttpRequest& request, const PathParameters&) {
          return json_answer(request.body);
        });
    app_.routes().add("POST",
                      "/api/v1/tables",
                      [](const HttpRequest& request, const PathParameters&) {
                        return json_answer(std::to_string(request.body.size()));
                      },
                      {.body_bytes = kTableBodyBytes});
    app_.routes().add("POST", "/api/v1/long", [this](const HttpRequest&, const PathParameters&) {
      return begun_answer(app_.works(), app_.works().start("judging", held_work()));
    });
    address_ = app_.begin().value();
  }

  // Goes on until it is told to stop.
  static LongWork held_work() {
    return [](const base::Executor&,
              const base::ProgressReport& report) -> base::ResultOrProblems<HttpResponse> {
      while (report({.fraction_done = 0.5, .stage = "fitting"})) std::this_thread::yield();
      return base::failed_by(
          {.kind = base::ProblemKind::interrupted, .sentence = "It was stopped."});
    };
  }

  [[nodiscard]] std::string key_line() const { return "X-Keenfall-Key: " + app_.key() + "\r\n"; }

  RawAnswer asked(const std::string& begin,
                  const std::string& more_lines = "",
                  const std::string& body = "") {
    return answer_to(app_.port(), request_of(begin, app_.port(), more_lines, body));
  }
  RawAnswer asked_with_key(const std::string& begin, const std::string& body = "") {
    const std::string length = "Content-Length: " + std::to_string(body.size()) + "\r\n";
    return asked(begin, key_line() + length, body);
  }

  App app_{{.port = 0}};
  std::string address_;
};

TEST_F(AnApp, HasAnAddressThatAnswers) {
  EXPECT_EQ(address_, "http://127.0.0.1:" + std::to_string(app_.port()) + "/#key=" + app_.key());
  const RawAnswer answer = asked("GET /");  // what stands behind "#" is never sent
  EXPECT_EQ(answer.status, 200);
  EXPECT_THAT(answer.head, HasSubstr("content-type: text/html"));
}

TEST_F(AnApp, AnswersItsApiToWhoeverHasTheKey) {
  EXPECT_EQ(asked("GET /api/v1/app", key_line()).status, 200);
}

TEST_F(AnApp, AnswersItsApiToNobodyElse) {
  const std::string nearly = "X-Keenfall-Key: " + app_.key().substr(0, 21) + "\r\n";
  for (const std::string& lines : {std::string(),
                                   std::string("X-Keenfall-Key: \r\n"),
                                   std::string("X-Keenfall-Key: AAAAAAAAAAAAAAAAAAAAAA\r\n"),
                                   "Cookie: X-Keenfall-Key=" + app_.key() + "\r\n",
                                   nearly}) {
    for (const char* begin : {"GET /api/v1/app",
                              "GET /api/v1/nowhere",
                              "GET /api",
                              "GET /api/",
                              "GET /%61pi/v1/app",
                              "POST /api/v1/echo"}) {
      const RawAnswer answer = asked(begin, lines);
      EXPECT_EQ(answer.status, 401) << begin << " " << lines;
      EXPECT_EQ(json::parse(answer.body)["problems"][0]["kind"], "not_allowed");
    }
  }
  EXPECT_EQ(asked("GET /api/v1/app?key=" + app_.key()).status, 401);
}

TEST_F(AnApp, DoesNotReadWhatIsSentWithoutTheKey) {
  RawClient client(app_.port());
  client.say(request_of("POST /api/v1/tables", app_.port(), "Content-Length: 100000000\r\n"));

  EXPECT_EQ(client.heard().status, 401);
}

TEST_F(AnApp, LeavesWhatIsSentToItsRoutes) {
  EXPECT_EQ(asked_with_key("POST /api/v1/echo", "{\"a\":1}").body, "{\"a\":1}");
  EXPECT_EQ(asked_with_key("GET /api/v1/nowhere").status, 404);
  EXPECT_EQ(asked_with_key("DELETE /api/v1/app").status, 405);
}

TEST_F(AnApp, TakesLargeBodiesOnlyWhereARouteDoes) {
  const std::string large(2'000'000, 'x');

  const RawAnswer refused = asked_with_key("POST /api/v1/echo", large);

  EXPECT_EQ(refused.status, 413);
  EXPECT_EQ(json::parse(refused.body)["problems"][0]["kind"], "too_large");
  EXPECT_EQ(asked_with_key("POST /api/v1/tables", large).body, "2000000");
}

TEST_F(AnApp, TakesNothingWithAPage) {
  const RawAnswer answer = asked("POST /", "Content-Length: 5\r\n", "hello");

  EXPECT_EQ(answer.status, 413);
  EXPECT_EQ(answer.body, "Nothing may be sent along with this request.\n");
  EXPECT_EQ(asked("POST /").status, 405);
}

TEST_F(AnApp, ReachesNoFileOfTheMachine) {
  for (const char* path : {"/../../../../etc/passwd",
                           "/%2e%2e/%2e%2e/etc/passwd",
                           "/..%2f..%2fetc/passwd",
                           "/assets/../../etc/passwd",
                           "//etc/passwd",
                           "/etc/passwd%00.html",
                           "/..\\..\\etc\\passwd"}) {
    EXPECT_EQ(asked(std::string("GET ") + path).status, 400) << path;
  }
  EXPECT_THAT(asked("GET /etc/passwd").body, HasSubstr("<title>Keenfall</title>"));
  EXPECT_EQ(asked("GET /etc/hosts.conf").status, 404);
}

TEST_F(AnApp, TellsOfLongWorkAndStopsIt) {
  const RawAnswer begun = asked_with_key("POST /api/v1/long");
  const std::string id = json::parse(begun.body)["work"]["id"];
  const std::string path = "/api/v1/works/" + id;
  while (json::parse(asked_with_key("GET " + path).body)["fraction"] != 0.5) continue;

  const json running = json::parse(asked_with_key("GET " + path).body);
  const RawAnswer no_result = asked_with_key("GET " + path + "/result");
  asked_with_key("DELETE " + path);
  json ended = json::parse(asked_with_key("GET " + path).body);
  while (ended["state"] == "running") ended = json::parse(asked_with_key("GET " + path).body);

  EXPECT_EQ(begun.status, 202);
  EXPECT_EQ(running["state"], "running");
  EXPECT_EQ(running["words"], "fitting");
  EXPECT_EQ(no_result.status, 409);
  EXPECT_EQ(ended["state"], "cancelled");
  EXPECT_EQ(asked_with_key("GET /api/v1/works/nothing").status, 404);
}

TEST_F(AnApp, GivesTheResultOfWorkThatIsDone) {
  const std::string id =
      app_.works().start("writing",
                         [](const base::Executor&,
                            const base::ProgressReport&) -> base::ResultOrProblems<HttpResponse> {
                           return HttpResponse{.content_type = "text/csv", .body = "blade,cuts\n"};
                         });
  while (app_.works().told(id)->state != wire::WorkState::done) std::this_thread::yield();

  const RawAnswer answer = asked_with_key("GET /api/v1/works/" + id + "/result");

  EXPECT_EQ(answer.status, 200);
  EXPECT_EQ(answer.body, "blade,cuts\n");
  EXPECT_THAT(answer.head, HasSubstr("content-type: text/csv\r\n"));
}

TEST_F(AnApp, StopsSoonWhileWorkRuns) {
  for (int i = 0; i < 5; ++i) app_.works().start("judging", held_work());

  EXPECT_LT(time_of([&] { app_.stop(); }), 1s);
  EXPECT_FALSE(RawClient(app_.port()).is_connected());
}

}  // namespace
}  // namespace keenfall::server
