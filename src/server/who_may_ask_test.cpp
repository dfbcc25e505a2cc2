#include "server/who_may_ask.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::server {
namespace {

constexpr std::uint16_t kPort = 17034;

OwnAddress loopback_at(std::uint16_t port) {
  return {.hosts = {"127.0.0.1", "localhost"}, .port = port};
}

// The status of the refusal; 0 for none.
int refused_with(const std::vector<NamedText>& headers, const OwnAddress& own) {
  const auto refusal = not_to_be_asked({.method = "GET", .path = "/", .headers = headers}, own);
  return refusal ? refusal->status : 0;
}

int refused_with(const std::vector<NamedText>& headers, std::uint16_t port = kPort) {
  return refused_with(headers, loopback_at(port));
}

int with_own_host(const NamedText& header) {
  return refused_with({{"host", "127.0.0.1:17034"}, header});
}

TEST(WhoMayAsk, IsWhoeverNamesTheServersOwnAddress) {
  EXPECT_EQ(refused_with({{"host", "127.0.0.1:17034"}}), 0);
  EXPECT_EQ(refused_with({{"host", "localhost:17034"}}), 0);
  EXPECT_EQ(refused_with({{"host", "LocalHost:17034"}}), 0);
}

TEST(WhoMayAsk, IsNobodyWhoNamesAnotherHost) {
  for (const char* host : {"keenfall.example:17034",
                           "127.0.0.1",
                           "127.0.0.1:17035",
                           "127.0.0.2:17034",
                           "localhost.example:17034",
                           "[::1]:17034",
                           "127.0.0.1:17034 ",
                           "127.0.0.1:017034",
                           "user@127.0.0.1:17034",
                           ""}) {
    EXPECT_EQ(refused_with({{"host", host}}), 403) << host;
  }
}

TEST(WhoMayAsk, MustNameExactlyOneHost) {
  EXPECT_EQ(refused_with({}), 400);
  EXPECT_EQ(refused_with({{"host", "127.0.0.1:17034"}, {"host", "127.0.0.1:17034"}}), 400);
  EXPECT_EQ(refused_with({{"host", "127.0.0.1:17034"}, {"host", "keenfall.example"}}), 400);
}

TEST(WhoMayAsk, LeavesTheUsualPortOutAsBrowsersDo) {
  EXPECT_EQ(refused_with({{"host", "127.0.0.1"}}, 80), 0);
  EXPECT_EQ(refused_with({{"host", "localhost"}, {"origin", "http://localhost"}}, 80), 0);
}

TEST(WhoMayAsk, IsItsOwnPagesAndNoOther) {
  EXPECT_EQ(with_own_host({"origin", "http://127.0.0.1:17034"}), 0);
  EXPECT_EQ(with_own_host({"origin", "http://localhost:17034"}), 0);
  for (const char* origin : {"http://keenfall.example",
                             "https://127.0.0.1:17034",
                             "http://127.0.0.1:3000",
                             "null",
                             ""}) {
    EXPECT_EQ(with_own_host({"origin", origin}), 403) << origin;
  }
  EXPECT_EQ(refused_with({{"host", "127.0.0.1:17034"},
                          {"origin", "http://127.0.0.1:17034"},
                          {"origin", "http://127.0.0.1:17034"}}),
            403);
}

TEST(WhoMayAsk, IsNobodyFromAnotherSite) {
  EXPECT_EQ(with_own_host({"sec-fetch-site", "same-origin"}), 0);
  EXPECT_EQ(with_own_host({"sec-fetch-site", "none"}), 0);
  EXPECT_EQ(with_own_host({"sec-fetch-site", "same-site"}), 403);
  EXPECT_EQ(with_own_host({"sec-fetch-site", "cross-site"}), 403);
}

TEST(WhoMayAsk, IsWhoeverGoesToAPageFromElsewhereAndGetsNothingOfANotebook) {
  const std::vector<NamedText> visit = {{"host", "127.0.0.1:17034"},
                                        {"sec-fetch-site", "cross-site"},
                                        {"sec-fetch-mode", "navigate"},
                                        {"sec-fetch-dest", "document"}};
  const auto status_of = [](const HttpRequest& request) {
    const auto refusal = not_to_be_asked(request, loopback_at(kPort));
    return refusal ? refusal->status : 0;
  };
  const auto framed = [&] {
    auto headers = visit;
    headers.back().text = "iframe";
    return headers;
  }();
  const auto fetched = [&] {
    auto headers = visit;
    headers.at(2).text = "no-cors";
    return headers;
  }();

  EXPECT_EQ(status_of({.method = "GET", .path = "/", .headers = visit}), 0);
  EXPECT_EQ(status_of({.method = "GET", .path = "/kit", .headers = visit}), 0);
  EXPECT_EQ(status_of({.method = "POST", .path = "/", .headers = visit}), 403);
  EXPECT_EQ(status_of({.method = "GET", .path = "/api/v1/app", .headers = visit}), 403);
  EXPECT_EQ(status_of({.method = "GET", .path = "/", .headers = framed}), 403);
  EXPECT_EQ(status_of({.method = "GET", .path = "/", .headers = fetched}), 403);
}

TEST(WhoMayAsk, SendsABodyWholeOrChunkedAndInNoOtherCoding) {
  EXPECT_EQ(with_own_host({"transfer-encoding", "chunked"}), 0);
  EXPECT_EQ(with_own_host({"transfer-encoding", "Chunked"}), 0);
  EXPECT_EQ(with_own_host({"transfer-encoding", "gzip, chunked"}), 400);
  EXPECT_EQ(with_own_host({"transfer-encoding", "identity"}), 400);
  EXPECT_EQ(refused_with({{"host", "127.0.0.1:17034"},
                          {"transfer-encoding", "chunked"},
                          {"transfer-encoding", "chunked"}}),
            400);
}

TEST(WhoMayAsk, IsWhoeverNamesTheAddressAtWhichItWasReached) {
  const OwnAddress own{
      .is_encrypted = true, .hosts = {"192.168.1.5", "bench.example"}, .port = 17035};

  EXPECT_EQ(refused_with({{"host", "192.168.1.5:17035"}}, own), 0);
  EXPECT_EQ(refused_with({{"host", "Bench.Example:17035"}}, own), 0);
  EXPECT_EQ(refused_with({{"host", "127.0.0.1:17035"}}, own), 403);
  EXPECT_EQ(refused_with({{"host", "192.168.1.6:17035"}}, own), 403);
  const NamedText host{"host", "192.168.1.5:17035"};
  EXPECT_EQ(refused_with({host, {"origin", "https://192.168.1.5:17035"}}, own), 0);
  EXPECT_EQ(refused_with({host, {"origin", "http://192.168.1.5:17035"}}, own), 403);
  EXPECT_EQ(refused_with({{"host", "192.168.1.5"}}, own), 403);
  EXPECT_EQ(refused_with({{"host", "192.168.1.5"}}, {.hosts = own.hosts, .port = 80}), 0);
}

TEST(WhoMayAsk, IsToldInASentenceWhy) {
  const auto refusal =
      not_to_be_asked({.headers = {{"host", "keenfall.example"}}}, loopback_at(kPort));

  EXPECT_EQ(refusal->sentence,
            "Keenfall answers only under its own address, http://127.0.0.1:17034/.");
  EXPECT_EQ(refusal->kind, "not_allowed");
}

}  // namespace
}  // namespace keenfall::server
