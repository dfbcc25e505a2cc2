#include "server/asked_app_test.h"

#include <gmock/gmock.h>

#include <chrono>
#include <cstdlib>
#include <functional>
#include <stdexcept>

#include <fcntl.h>
#include <unistd.h>

namespace keenfall::server {
namespace {

using ::testing::HasSubstr;
using testing::json;

// A scale at a pseudo-terminal: what is said is a line that it sends.
class ScaleRoutes : public testing::AskedApp {
 protected:
  ScaleRoutes() : scale_(posix_openpt(O_RDWR | O_NOCTTY)) {
    if (scale_ < 0 || grantpt(scale_) != 0 || unlockpt(scale_) != 0) {
      throw std::runtime_error("no pseudo-terminal");
    }
    device_ = ptsname(scale_);
  }
  ~ScaleRoutes() override {
    if (scale_ >= 0) close(scale_);
  }

  void sends(const std::string& line) const {
    const std::string bytes = line + "\r\n";
    ASSERT_EQ(write(scale_, bytes.data(), bytes.size()), static_cast<ssize_t>(bytes.size()));
  }
  json used(const json& more = json::object()) {
    json use = {{"device", device_}};
    use.update(more);
    return got("PUT", "/scale", "Scale", use);
  }
  // Asked again until it is so, or for five seconds.
  json once(const std::function<bool(const json& state)>& is_so) {
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(5);
    json told;
    do {
      told = got("GET", "/scale", "Scale");
      if (is_so(told["state"])) break;
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
    } while (std::chrono::steady_clock::now() < end);
    return told["state"];
  }
  void presses_to(double most) {
    for (const double share : {0.0, 0.0, 0.3, 0.7, 0.9, 1.0, 0.4, 0.05, 0.0, 0.0, 0.0}) {
      sends(std::to_string(most * share) + " g");
      std::this_thread::sleep_for(std::chrono::milliseconds(60));
    }
  }
  void is_unplugged() {
    close(scale_);
    scale_ = -1;
  }

  int scale_;
  std::string device_;
};

TEST_F(ScaleRoutes, TellNoScaleWhereNoneIsInUse) {
  EXPECT_FALSE(got("GET", "/scale", "Scale").contains("used"));
  EXPECT_THAT(
      refused(409, "POST", "/scale/hold", {{"kind", "peak"}})["sentence"].get<std::string>(),
      HasSubstr("No scale is in use"));
}

TEST_F(ScaleRoutes, TellWhatTheScaleShows) {
  EXPECT_EQ(used({{"baud", 4800}, {"decimal", "comma"}})["used"],
            (json{{"device", device_}, {"baud", 4800}, {"format", "8N1"}, {"decimal", "comma"}}));

  // Of the first line the beginning may be lost, so it is not read.
  for (int line = 0; line < 2; ++line) sends("ST,GS,+  104,2 g");

  const json state = once([](const json& now) { return now.contains("shows"); });
  ASSERT_TRUE(state.contains("shows")) << state;
  EXPECT_EQ(state["connection"], "hearing");
  EXPECT_EQ(state["shows"]["words"], "104.2 g");
  EXPECT_TRUE(state["shows"]["is_stable"]);
}

TEST_F(ScaleRoutes, HoldAReadingUntilTheNextIsArmedFor) {
  (void)used();
  const json armed = got("POST", "/scale/hold", "Scale", {{"kind", "peak"}})["state"];
  EXPECT_EQ(armed["hold"], 1);
  presses_to(200);
  EXPECT_TRUE(once([](const json& now) { return now.contains("held"); }).contains("held"));

  for (int asked = 0; asked < 2; ++asked) {
    const json held = got("GET", "/scale?unit=N", "Scale")["state"]["held"];
    // 200 g at standard gravity, 9.80665 m/s2 (ISO 80000-3).
    EXPECT_NEAR(held["reading"].get<double>(), 1.96133, 1e-9);
    EXPECT_THAT(held["line"].get<std::string>(), HasSubstr("200.0"));
  }
  const json next = got("POST", "/scale/hold", "Scale", {{"kind", "peak"}})["state"];
  EXPECT_EQ(next["hold"], 2);
  EXPECT_FALSE(next.contains("held"));
}

TEST_F(ScaleRoutes, SayWhereWhatIsHeldIsNoSuchReadingAndHoldItStill) {
  (void)used();
  (void)got("POST", "/scale/hold", "Scale", {{"kind", "peak"}});
  presses_to(200);
  (void)once([](const json& now) { return now.contains("held"); });

  const json state = got("GET", "/scale?unit=mm", "Scale")["state"];

  EXPECT_FALSE(state.contains("held"));
  EXPECT_THAT(state["trouble"].get<std::string>(), HasSubstr("is not in mm"));
  EXPECT_EQ(got("GET", "/scale?unit=gf", "Scale")["state"]["held"]["reading"], 200);
}

TEST_F(ScaleRoutes, SayThatAScaleWasUnplugged) {
  (void)used();
  for (int line = 0; line < 2; ++line) sends("104.2 g");
  (void)once([](const json& now) { return now.contains("shows"); });

  is_unplugged();

  EXPECT_EQ(once([](const json& now) { return now["connection"] == "unplugged"; })["connection"],
            "unplugged");
  EXPECT_FALSE(got("DELETE", "/scale", "Scale").contains("used"));
}

TEST_F(ScaleRoutes, SayWhyAScaleIsNotThere) {
  const json told = got("PUT", "/scale", "Scale", {{"device", "/dev/no-such-scale"}});

  EXPECT_EQ(told["state"]["connection"], "cannot_open");
  EXPECT_FALSE(told["state"]["why"].get<std::string>().empty());
}

TEST_F(ScaleRoutes, NameEveryFieldThatCannotBeUsed) {
  EXPECT_EQ(refused(400, "PUT", "/scale", {{"device", ""}})["column"], "device");
  EXPECT_EQ(refused(400, "PUT", "/scale", {{"device", "x"}, {"baud", 1}})["column"], "baud");
  EXPECT_EQ(refused(400, "PUT", "/scale", {{"device", "x"}, {"format", "9X9"}})["column"],
            "format");
  EXPECT_EQ(refused(400, "POST", "/scale/hold", {{"kind", "most"}})["column"], "kind");
}

TEST_F(ScaleRoutes, LetADeviceUseNoOtherFileThanALineThatIsTold) {
  Routes of_a_device;
  add_scale_routes(of_a_device, open_, AtDesk::no);

  const HttpResponse answer = of_a_device.answer(
      {.method = "PUT", .path = "/api/v1/scale", .body = json{{"device", device_}}.dump()});

  EXPECT_EQ(answer.status, 400);
  EXPECT_FALSE(got("GET", "/scale", "Scale").contains("used"));
}

}  // namespace
}  // namespace keenfall::server
