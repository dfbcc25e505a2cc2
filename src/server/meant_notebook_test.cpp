// A request reaches the notebook that it means, or none.
#include "server/meant_notebook.h"

#include "server/asked_app_test.h"
#include "workbench/notebook_place.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace keenfall::server {
namespace {

using testing::json;

class MeantNotebook : public testing::AskedApp {
 protected:
  void SetUp() override { says_which_ = false; }

  // Its id.
  std::string made(const std::string& name) {
    return got("POST", "/notebooks", "App", {{"how", "make"}, {"path", name}})["notebook"]["id"];
  }
  void mean(const std::string& id) { headers_ = {{.name = "x-keenfall-notebook", .text = id}}; }
};

// Tells which is open, or neither reads nor changes it.
bool is_of_no_notebook(std::string_view route) {
  constexpr std::array<std::string_view, 14> kAll = {"GET /api/v1/app",
                                                     "GET /api/v1/bench",
                                                     "GET /api/v1/devices",
                                                     "POST /api/v1/devices/code",
                                                     "DELETE /api/v1/devices/{device}",
                                                     "GET /api/v1/scale",
                                                     "PUT /api/v1/scale",
                                                     "DELETE /api/v1/scale",
                                                     "POST /api/v1/scale/hold",
                                                     "GET /api/v1/notebooks",
                                                     "POST /api/v1/notebooks",
                                                     "POST /api/v1/stop",
                                                     "GET /api/v1/reference/steels",
                                                     "GET /api/v1/reference/grits"};
  return std::ranges::count(kAll, route) > 0;
}

bool only_reads(std::string_view route) {
  return route.starts_with("GET ") || route.starts_with("POST /api/v1/planning/") ||
         route == "POST /api/v1/export" || route == "POST /api/v1/tables/read" ||
         route == "POST /api/v1/bench/{run}/look";
}

TEST_F(MeantNotebook, EveryRouteThatTouchesItRefusesAnother) {
  const std::string first = made("first");
  (void)made("second");
  mean(first);

  for (const std::string& route : routes_.listed()) {
    if (is_of_no_notebook(route)) continue;
    const std::size_t blank = route.find(' ');
    const std::string path = route.substr(blank + 1 + std::string_view("/api/v1").size());
    const json problem = refused(409, route.substr(0, blank), path, json::object());
    EXPECT_EQ(problem["kind"], "another_notebook") << route;
    EXPECT_EQ(problem["sentence"],
              "Another notebook is open in Keenfall now, second.keen. What was meant for the one "
              "before was not done.")
        << route;
  }
}

TEST_F(MeantNotebook, AChangeThatDoesNotSayWhichIsRefusedAndReadingIsNot) {
  (void)made("first");

  for (const std::string& route : routes_.listed()) {
    if (is_of_no_notebook(route)) continue;
    const std::size_t blank = route.find(' ');
    const std::string path = route.substr(blank + 1 + std::string_view("/api/v1").size());
    const HttpResponse answer = asked(route.substr(0, blank), path, "{}");
    const bool is_refused_for_that =
        answer.body.find("which notebook it is meant for") != std::string::npos;
    EXPECT_EQ(is_refused_for_that, !only_reads(route)) << route << ": " << answer.body;
    if (is_refused_for_that) {
      EXPECT_EQ(answer.status, 400) << route;
    }
  }
}

TEST_F(MeantNotebook, WhatIsMeantForTheFirstDoesNotComeIntoTheSecond) {
  const std::string first = made("first");
  const std::string second = made("second");

  mean(first);
  (void)refused(409, "POST", "/kit/blades", {{"name", "A"}});
  mean(second);
  EXPECT_TRUE(got("GET", "/kit", "Kit")["blades"].empty());
  (void)got("POST", "/kit/blades", "Kit", {{"name", "A"}});
  EXPECT_EQ(got("GET", "/kit", "Kit")["blades"].size(), 1U);
}

TEST_F(MeantNotebook, ACopyIsAnother) {
  const std::string first = made("first");
  std::filesystem::copy_file(folder_ / "first.keen", folder_ / "copy.keen");
  const json copy = got("POST", "/notebooks", "App", {{"how", "open"}, {"path", "copy.keen"}});

  EXPECT_NE(copy["notebook"]["id"], first);
  mean(first);
  EXPECT_EQ(refused(409, "GET", "/home", nullptr)["kind"], "another_notebook");
}

TEST_F(MeantNotebook, IsMeantStillOnceItIsOpenAgain) {
  const std::string first = made("first");
  (void)made("second");
  const json again = got("POST", "/notebooks", "App", {{"how", "open"}, {"path", "first.keen"}});

  EXPECT_EQ(again["notebook"]["id"], first);
  mean(first);
  (void)got("POST", "/kit/blades", "Kit", {{"name", "A"}});
}

TEST_F(MeantNotebook, IsNotFoundWhereNoneIsOpenAnyMore) {
  mean(std::string(32, 'f'));  // of a Keenfall before this one

  const json problem = refused(409, "GET", "/home", nullptr);

  EXPECT_EQ(problem["kind"], "another_notebook");
  EXPECT_EQ(problem["sentence"],
            "No notebook is open in Keenfall any more. What was meant for the one before was not "
            "done.");
}

TEST_F(MeantNotebook, ThatCannotBeReadIsRefusedWithWhatIsWrong) {
  mean(made("first"));
  std::filesystem::remove(folder_ / "first.keen");

  EXPECT_EQ(refused(409, "GET", "/home", nullptr)["kind"], "unreadable");
}

}  // namespace
}  // namespace keenfall::server
