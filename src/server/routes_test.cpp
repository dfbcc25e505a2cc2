#include "server/routes.h"

#include "server/answers.h"
#include "workbench/notebook_trouble.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <new>
#include <stdexcept>
#include <string>

namespace keenfall::server {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

RouteHandler saying(const std::string& words) {
  return [words](const HttpRequest&, const PathParameters&) {
    return HttpResponse{.content_type = "text/plain", .body = words};
  };
}

template <class Thrown>
RouteHandler throwing(const Thrown& thrown) {
  return [thrown](const HttpRequest&, const PathParameters&) -> HttpResponse { throw thrown; };
}

HttpResponse asked(const Routes& routes, const std::string& method, const std::string& path) {
  return routes.answer({.method = method, .path = path});
}

std::string sentence_in(const HttpResponse& answer) {
  return nlohmann::json::parse(answer.body)["problems"][0]["sentence"];
}

TEST(Routes, GiveAHandlerWhatStandsInPlaceOfTheBraces) {
  Routes routes;
  routes.add(
      "PUT",
      "/api/v1/kit/{sort}/{uid}",
      [](const HttpRequest& request, const PathParameters& path) {
        return HttpResponse{.body = path.at("sort") + "|" + path.at("uid") + "|" + request.body};
      });

  const HttpResponse answer =
      routes.answer({.method = "PUT", .path = "/api/v1/kit/blades/a b", .body = "{}"});

  EXPECT_EQ(answer.body, "blades|a b|{}");
}

TEST(Routes, PreferAWordToBraces) {
  Routes routes;
  routes.add("GET", "/a/{any}", saying("any"));
  routes.add("GET", "/a/b", saying("b"));
  routes.add("GET", "/{x}/b", saying("x"));

  EXPECT_EQ(asked(routes, "GET", "/a/b").body, "b");
  EXPECT_EQ(asked(routes, "GET", "/a/c").body, "any");
}

TEST(Routes, AnswerHeadAsGet) {
  Routes routes;
  routes.add("GET", "/a", saying("a"));

  EXPECT_EQ(asked(routes, "HEAD", "/a").body, "a");
}

TEST(Routes, SayWhereThereIsNothing) {
  Routes routes;
  routes.add("GET", "/api/v1/trials/{trial}", saying("one"));

  for (const char* path : {"/api/v1/trials", "/api/v1/trials/", "/api/v1/trials/7/8", "/api/v1"}) {
    const HttpResponse answer = asked(routes, "GET", path);
    EXPECT_EQ(answer.status, 404) << path;
    EXPECT_EQ(sentence_in(answer), std::string("There is nothing at ") + path + ".");
  }
}

TEST(Routes, SayByWhichMethodsAPathCanBeAsked) {
  Routes routes;
  routes.add("GET", "/a/{x}", saying("get"));
  routes.add("DELETE", "/a/{x}", saying("delete"));

  const HttpResponse answer = asked(routes, "POST", "/a/1");

  EXPECT_EQ(answer.status, 405);
  EXPECT_THAT(answer.headers, ElementsAre(NamedText{"Allow", "GET, DELETE"}));
  EXPECT_EQ(sentence_in(answer), "This can only be asked with GET, DELETE.");
}

TEST(Routes, AnswerForHandlersThatFail) {
  Routes routes;
  routes.add("GET", "/api/disk", throwing(workbench::NotebookTrouble("a.keen: The disk is full.")));
  routes.add("GET", "/api/fault", throwing(std::logic_error("a row has cells")));
  routes.add("GET", "/api/memory", throwing(std::bad_alloc()));

  EXPECT_EQ(asked(routes, "GET", "/api/disk").status, 503);
  EXPECT_EQ(sentence_in(asked(routes, "GET", "/api/disk")), "a.keen: The disk is full.");
  EXPECT_EQ(asked(routes, "GET", "/api/fault").status, 500);
  EXPECT_EQ(sentence_in(asked(routes, "GET", "/api/fault")),
            "This is a fault in Keenfall, not in what you gave it: a row has cells.");
  EXPECT_EQ(asked(routes, "GET", "/api/memory").status, 503);
}

TEST(Routes, TakeTheBodyThatARouteWasAddedWith) {
  Routes routes;
  routes.add("POST", "/small", saying(""));
  routes.add("POST", "/tables", saying(""), {.body_bytes = kTableBodyBytes});

  EXPECT_EQ(routes.body_bytes_of({.method = "POST", .path = "/small"}), 1024U * 1024U);
  EXPECT_EQ(routes.body_bytes_of({.method = "POST", .path = "/tables"}), 128U * 1024U * 1024U);
  EXPECT_EQ(routes.body_bytes_of({.method = "GET", .path = "/nowhere"}), 1024U * 1024U);
}

TEST(Routes, WaitForAWriterWhereTheyMayChangeAnything) {
  Routes routes;
  routes.add("GET", "/a", saying(""));
  routes.add("POST", "/a", saying(""));
  routes.add("POST", "/cost", saying(""), {.does = RouteDoes::reads});

  EXPECT_FALSE(routes.may_wait_for_a_writer({.method = "GET", .path = "/a"}));
  EXPECT_FALSE(routes.may_wait_for_a_writer({.method = "HEAD", .path = "/a"}));
  EXPECT_TRUE(routes.may_wait_for_a_writer({.method = "POST", .path = "/a"}));
  EXPECT_FALSE(routes.may_wait_for_a_writer({.method = "POST", .path = "/cost"}));
  EXPECT_FALSE(routes.may_wait_for_a_writer({.method = "POST", .path = "/nowhere"}));
}

TEST(Routes, AreThereOnce) {
  Routes routes;
  routes.add("GET", "/a", saying(""));

  EXPECT_THROW(routes.add("GET", "/a", saying("")), std::logic_error);
  EXPECT_NO_THROW(routes.add("POST", "/a", saying("")));
  EXPECT_THAT(routes.listed(), ElementsAre("GET /a", "POST /a"));
}

TEST(Answers, GiveEveryKindOfProblemItsStatus) {
  using enum base::ProblemKind;
  for (const auto kind : {bad_value, missing, unknown_name, unsuitable_data}) {
    EXPECT_EQ(problem_answer({.kind = kind, .sentence = "No."}).status, 400);
  }
  for (const auto kind : {conflicting, unreadable, interrupted}) {
    EXPECT_EQ(problem_answer({.kind = kind, .sentence = "No."}).status, 409);
  }
  EXPECT_EQ(problem_answer({.kind = too_large, .sentence = "No."}).status, 413);
}

TEST(Answers, HoldAllProblemsUnderTheStatusOfTheFirst) {
  const std::vector<base::Problem> problems = {
      {.kind = base::ProblemKind::conflicting, .sentence = "One."}, {.sentence = "Two."}};

  const HttpResponse answer = problems_answer(problems);

  EXPECT_EQ(answer.status, 409);
  EXPECT_EQ(answer.content_type, "application/json");
  EXPECT_EQ(nlohmann::json::parse(answer.body)["problems"].size(), 2U);
}

}  // namespace
}  // namespace keenfall::server
