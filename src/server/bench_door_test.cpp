#include "server/bench_door.h"

#include "server/asked_app_test.h"
#include "server/raw_client_test.h"

#include <gmock/gmock.h>

namespace keenfall::server {
namespace {

using ::testing::HasSubstr;
using testing::json;
using testing::RawAnswer;
using ::testing::StartsWith;

class ABenchDoor : public testing::AskedApp {
 protected:
  ABenchDoor() {
    add_device_routes(
        {.routes = desk_, .works = works_, .open = open_, .ask_to_stop = {}, .bench_door = &door_});
    if (door_.begin()) throw std::runtime_error("the door cannot be opened");
    (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  }

  RawAnswer at_door(const std::string& begin,
                    const std::string& key = {},
                    const std::string& body = {}) const {
    const std::string length = "Content-Length: " + std::to_string(body.size()) + "\r\n";
    const std::string own = key.empty() ? "" : "X-Keenfall-Key: " + key + "\r\n";
    return testing::answer_to(door_.port(),
                              testing::request_of(begin, door_.port(), own + length, body));
  }
  json at_desk(const std::string& method, const std::string& path) const {
    return json::parse(desk_.answer({.method = method, .path = "/api/v1" + path}).body);
  }
  std::string key_of_a_device() {
    const std::string code = at_desk("POST", "/devices/code")["letting_in"]["code"];
    const json ask = {{"code", code}, {"name", "phone"}};
    return json::parse(at_door("POST /api/v1/let-in", "", ask.dump()).body)["key"];
  }

  Routes desk_;
  BenchDoor door_{
      open_,
      {.port = 0, .devices = {.utc_now = [] { return std::string("2026-11-26T12:00:00Z"); }}}};
};

TEST_F(ABenchDoor, AnswersNothingWithoutAKeyOfItsOwn) {
  for (const char* request :
       {"GET /api/v1/bench", "GET /api/v1/app", "GET /api/v1/devices", "GET /api/v1/none"}) {
    EXPECT_EQ(at_door(request).status, 401) << request;
    EXPECT_EQ(at_door(request, "AAAAAAAAAAAAAAAAAAAAAA").status, 401) << request;
  }
  EXPECT_THAT(at_door("GET /api/v1/bench").body, HasSubstr("\"not_let_in\""));
}

TEST_F(ABenchDoor, LetsADeviceInByTheCodeOfTheDesk) {
  const std::string key = key_of_a_device();

  const RawAnswer answer = at_door("GET /api/v1/bench", key);

  EXPECT_EQ(answer.status, 200);
  EXPECT_FALSE(json::parse(answer.body)["is_at_desk"]);
  const json told = at_desk("GET", "/devices");
  EXPECT_EQ(told["devices"].at(0)["name"], "phone");
  EXPECT_FALSE(told.contains("letting_in"));
  EXPECT_THAT(told.dump(), ::testing::Not(HasSubstr(key)));
}

TEST_F(ABenchDoor, RefusesADeviceThatWasPutOut) {
  const std::string key = key_of_a_device();
  const std::string id = at_desk("GET", "/devices")["devices"].at(0)["id"];

  EXPECT_TRUE(at_desk("DELETE", "/devices/" + id)["devices"].empty());

  EXPECT_EQ(at_door("GET /api/v1/bench", key).status, 401);
  EXPECT_EQ(at_door("POST /api/v1/bench/x", key, "{}").status, 401);
}

// What is not there cannot be reached.
TEST_F(ABenchDoor, HasTheRoutesOfTheBenchAndNoOther) {
  EXPECT_THAT(door_.routes().listed(),
              ::testing::UnorderedElementsAre("GET /api/v1/bench",
                                              "GET /api/v1/trials/{trial}/bench",
                                              "POST /api/v1/trials/{trial}/bench",
                                              "GET /api/v1/bench/{run}",
                                              "POST /api/v1/bench/{run}",
                                              "POST /api/v1/bench/{run}/look",
                                              "GET /api/v1/scale",
                                              "PUT /api/v1/scale",
                                              "DELETE /api/v1/scale",
                                              "POST /api/v1/scale/hold",
                                              "POST /api/v1/let-in"));
}

TEST_F(ABenchDoor, AnswersADeviceNothingOfTheDesk) {
  const std::string key = key_of_a_device();
  for (const char* request :
       {"GET /api/v1/app", "GET /api/v1/home", "GET /api/v1/journal", "GET /api/v1/devices"}) {
    EXPECT_EQ(at_door(request, key).status, 404) << request;
  }
}

TEST_F(ABenchDoor, HasThePagesOfTheBenchAlone) {
  const std::string bench = at_door("GET /bench").body;

  EXPECT_THAT(bench, HasSubstr("Keenfall: the bench"));
  for (const char* page : {"GET /", "GET /kit", "GET /bench?trial=x"}) {
    EXPECT_EQ(at_door(page).body, bench) << page;
  }
  EXPECT_EQ(at_door("GET /index.html").status, 404);
}

TEST_F(ABenchDoor, ReadsNoMoreOfARequestToBeLetInThanItNeeds) {
  EXPECT_EQ(at_door("POST /api/v1/let-in", "", std::string(5000, ' ')).status, 413);
  EXPECT_EQ(at_door("POST /api/v1/let-in", "", "{").status, 409);
  EXPECT_EQ(at_door("POST /api/v1/let-in", "", R"({"code": "AAAA-AAAA"})").status, 400);
}

TEST_F(ABenchDoor, IsNotFilledByThoseWhoAskToBeLetInAndDoNotEnd) {
  const std::string half =
      testing::request_of("POST /api/v1/let-in", door_.port(), "Content-Length: 4096\r\n", "{");
  std::vector<testing::RawClient> strangers;
  for (std::size_t i = 0; i <= HttpLimits{}.connections; ++i) {
    strangers.emplace_back(door_.port()).say(half);
  }

  EXPECT_EQ(at_door("GET /bench").status, 200);
}

TEST_F(ABenchDoor, TellsTheDeskWhereItIsAndWhatThatMeans) {
  const json told = at_desk("POST", "/devices/code");

  EXPECT_EQ(wire::testing::faults_against_api(told, "Devices"), "");
  EXPECT_TRUE(told["is_open"]);
  EXPECT_FALSE(told["is_encrypted"]);
  EXPECT_THAT(told["cautions"].at(0).get<std::string>(), HasSubstr("is not encrypted"));
  for (const std::string address : told["addresses"]) {
    EXPECT_THAT(address, StartsWith("http://"));
    EXPECT_THAT(address, ::testing::EndsWith(":" + std::to_string(door_.port())));
  }
}

TEST_F(ABenchDoor, OfAKeenfallThatWasStartedWithoutIsNotOpened) {
  EXPECT_FALSE(got("GET", "/devices", "Devices")["is_open"]);
  EXPECT_THAT(refused(409, "POST", "/devices/code", nullptr)["accepted"], HasSubstr("--bench"));
}

}  // namespace
}  // namespace keenfall::server
