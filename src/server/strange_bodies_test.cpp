// Bodies that no page sends, at every route that takes one: each is refused, and Keenfall goes on.
#include "server/asked_app_test.h"

#include <gtest/gtest.h>

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::server {
namespace {

using testing::AskedApp;
using testing::json;

constexpr int kOk = 200;
constexpr int kBadRequest = 400;
constexpr int kServerFaults = 500;

class AStrangeBody : public AskedApp {
 protected:
  // Method and path, as they are asked, of all that may be sent something.
  struct Asked {
    std::string method;
    std::string path;
  };
  [[nodiscard]] std::vector<Asked> asked_with_bodies(const std::string& trial) const {
    const std::string prefix = "/api/v1";
    std::vector<Asked> all;
    for (const std::string& route : routes_.listed()) {
      const std::size_t blank = route.find(' ');
      Asked one{.method = route.substr(0, blank), .path = route.substr(blank + 1 + prefix.size())};
      put(one.path, "{trial}", trial);
      put(one.path, "{entry}", "1");
      put(one.path, "{uid}", "00000000-0000-4000-8000-000000000000");
      if (one.method == "POST" || one.method == "PUT") all.push_back(one);
    }
    return all;
  }

 private:
  static void put(std::string& path, const std::string& brace, const std::string& value) {
    const std::size_t at = path.find(brace);
    if (at != std::string::npos) path.replace(at, brace.size(), value);
  }
};

std::string nested(std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); }

TEST_F(AStrangeBody, ThatIsNestedDeeplyEndsNothing) {
  constexpr std::size_t kDeep = 450'000;
  const std::vector<Asked> all = asked_with_bodies(with_demo());
  ASSERT_GT(all.size(), 20U);

  for (const auto& [method, path] : all) {
    for (const std::string& body : {nested(kDeep),
                                    R"({"name":)" + nested(kDeep) + "}",
                                    R"({"cuttings":)" + nested(kDeep) + "}"}) {
      const HttpResponse answer = asked(method, path, body);
      EXPECT_LT(answer.status, kServerFaults) << method << " " << path;
    }
  }
  EXPECT_EQ(asked("GET", "/home").status, kOk);
}

TEST_F(AStrangeBody, ThatIsNestedDeeplyIsRefusedAsSuch) {
  const std::string trial = with_demo();
  const std::string body =
      R"({"blades":["A"],"edges":[{}],"crossed":true,"cuttings":)" + nested(80'000) + "}";

  for (const std::string path : {"/planning/arms",
                                 "/kit/blades",
                                 "/trials",
                                 "/journal/1/undo",
                                 "/notebooks",
                                 "/tables/read",
                                 "/tables/take",
                                 "/export"}) {
    const HttpResponse answer = asked("POST", path, body);
    EXPECT_EQ(answer.status, kBadRequest) << path;
    EXPECT_NE(answer.body.find("nested too deeply"), std::string::npos) << path;
  }
  EXPECT_EQ(asked("POST", "/trials/" + trial + "/judgements", body).status, kBadRequest);
}

TEST_F(AStrangeBody, WithALongNameIsRefused) {
  const std::string trial = with_demo();
  const std::string path = "/trials/" + trial + "/name";

  const json problem = refused(kBadRequest, "PUT", path, {{"name", std::string(16'400, 'n')}});

  EXPECT_EQ(problem["accepted"], "a text of at most 1,000 bytes");
  EXPECT_LT(problem["found"].get<std::string>().size(), 100U);
  EXPECT_EQ(refused(kBadRequest, "PUT", path, {{"name", "a\nb\x07\u202E"}})["accepted"],
            "a text on one line, without control characters");
}

}  // namespace
}  // namespace keenfall::server
