// How much, how long and how many a server takes, as bytes on a socket see it.
#include "server/echoing_server_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <string>
#include <thread>
#include <vector>

namespace keenfall::server {
namespace {

using testing::answer_to;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::RawAnswer;
using testing::RawClient;
using testing::request_of;
using testing::time_of;
using namespace std::chrono_literals;

using testing::echo;
using testing::kBodyBytes;

class LimitsOfAServer : public testing::EchoingServer {};

TEST_F(LimitsOfAServer, RefusesABodyThatIsTooLarge) {
  const std::string large(kBodyBytes + 1, 'x');
  const RawAnswer stated = asked("POST /a", "Content-Length: 1001\r\n", large);
  const RawAnswer chunked =
      asked("POST /a", "Transfer-Encoding: chunked\r\n", "3E9\r\n" + large + "\r\n0\r\n\r\n");
  const RawAnswer beyond_any = asked("POST /a", "Content-Length: 99999999999\r\n", large);

  for (const RawAnswer& answer : {stated, chunked}) {
    EXPECT_EQ(answer.status, 413);
    EXPECT_EQ(answer.body, "At most 1000 bytes may be sent along with this request.\n");
    EXPECT_TRUE(answer.is_last);
  }
  EXPECT_EQ(beyond_any.status, 413);
}

TEST_F(LimitsOfAServer, TakesABodyThatIsJustAsLargeAsItMayBe) {
  const std::string body(kBodyBytes, 'x');

  EXPECT_EQ(asked("POST /a", "Content-Length: 1000\r\n", body).status, 200);
  EXPECT_EQ(
      asked("POST /a", "Transfer-Encoding: chunked\r\n", "3E8\r\n" + body + "\r\n0\r\n\r\n").status,
      200);
}

TEST_F(LimitsOfAServer, RefusesAHeaderThatIsTooLarge) {
  const std::string line = "X-Long: " + std::string(9000, 'x') + "\r\n";
  std::string many;
  for (int i = 0; i < 1000; ++i) many += "X-" + std::to_string(i) + ": y\r\n";

  EXPECT_EQ(asked("GET /", line).status, 431);
  EXPECT_EQ(asked("GET /", many).status, 431);
  EXPECT_EQ(asked("GET /" + std::string(9000, 'x')).status, 431);
}

TEST_F(LimitsOfAServer, StopsReadingAHeaderThatComesLineByLine) {
  RawClient client(server_.port());
  client.say("GET / HTTP/1.1\r\n");
  // What comes on the way to it is thrown away for a while, so that the refusal is heard.
  const auto give_up = std::chrono::steady_clock::now() + 30s;
  bool takes_more = true;
  while (takes_more && std::chrono::steady_clock::now() < give_up) {
    takes_more = client.say("X: y\r\n");
  }

  EXPECT_EQ(client.heard().status, 431);
  EXPECT_FALSE(takes_more);
}

TEST_F(LimitsOfAServer, StopsReadingALineThatDoesNotEnd) {
  RawClient client(server_.port());
  client.say("GET / HTTP/1.1\r\nX-Long: ");
  const std::string much(1 << 20, 'x');
  for (int i = 0; i < 64 && client.say(much); ++i) continue;

  EXPECT_EQ(client.heard().status, 431);
}

TEST_F(LimitsOfAServer, StopsReadingAChunksSizeThatDoesNotEnd) {
  RawClient client(server_.port());
  client.say(request_of("POST /", server_.port(), "Transfer-Encoding: chunked\r\n", "1;"));
  const std::string much(1 << 20, 'x');
  for (int i = 0; i < 64 && client.say(much); ++i) continue;

  EXPECT_THAT(client.heard().status, ::testing::AnyOf(400, 431));
}

TEST_F(LimitsOfAServer, DoesNotReadTheBodyOfWhoeverIsNotAdmitted) {
  bool is_answered = false;
  const HttpServer server = begun(
      {},
      {.admit =
           [](const HttpRequest&) { return Admission{.refused = HttpResponse{.status = 401}}; },
       .answer =
           [&](const HttpRequest&) {
             is_answered = true;
             return HttpResponse{};
           }});

  const RawAnswer answer =
      answer_to(server.port(), request_of("POST /", server.port(), "Content-Length: 9\r\n", "abc"));

  EXPECT_EQ(answer.status, 401);
  EXPECT_TRUE(answer.is_last);
  EXPECT_FALSE(is_answered);
}

TEST_F(LimitsOfAServer, AnswersWhileTwoHundredConnectionsAreIdle) {
  std::vector<RawClient> idle;
  for (int i = 0; i < 200; ++i) idle.emplace_back(server_.port());

  RawAnswer answer;
  const auto time = time_of([&] { answer = asked("GET /a"); });

  EXPECT_EQ(answer.status, 200);
  EXPECT_LT(time, 200ms);
}

TEST_F(LimitsOfAServer, AnswersWhileTwoHundredRequestsAreHalfSent) {
  std::vector<RawClient> halves;
  for (int i = 0; i < 200; ++i) {
    halves.emplace_back(server_.port());
    halves.back().say(i % 2 == 0 ? "GET /a HTT"
                                 : request_of("POST /a", server_.port(), "Content-Length: 9\r\n"));
  }

  RawAnswer answer;
  const auto time = time_of([&] { answer = asked("GET /a"); });

  EXPECT_EQ(answer.status, 200);
  EXPECT_LT(time, 200ms);
}

TEST_F(LimitsOfAServer, EndsTheConnectionThatHasWaitedLongestWhereThereAreTooMany) {
  const HttpServer server = begun({.connections = 3});
  std::vector<RawClient> clients;
  for (int i = 0; i < 3; ++i) {
    clients.emplace_back(server.port());
    clients.back().say(request_of("GET /a", server.port()));
    EXPECT_EQ(clients.back().heard().status, 200);
  }
  clients[0].say(request_of("GET /a", server.port()));
  EXPECT_EQ(clients[0].heard().status, 200);

  EXPECT_EQ(answer_to(server.port(), request_of("GET /b", server.port())).status, 200);

  EXPECT_TRUE(clients[1].hears_it_close());
  clients[0].say(request_of("GET /a", server.port()));
  EXPECT_EQ(clients[0].heard().status, 200);
}

TEST_F(LimitsOfAServer, EndsNoConnectionThatSendsWhatItMayForThoseWhoAskNothing) {
  const HttpServer server = begun({.connections = 3});
  RawClient sending(server.port());
  sending.say(request_of("POST /a", server.port(), "Content-Length: 5\r\n", "he"));
  RawClient half(server.port());
  half.say("GET /a HTT");
  std::vector<RawClient> idle;
  for (int i = 0; i < 6; ++i) {
    idle.emplace_back(server.port());
    std::this_thread::sleep_for(10ms);
  }

  EXPECT_TRUE(half.hears_it_close());
  sending.say("llo");
  EXPECT_EQ(sending.heard().body, "POST /a|hello");
}

TEST_F(LimitsOfAServer, TurnsAwayWhoeverComesWhereAllAreAllowedToSend) {
  const HttpServer server = begun({.connections = 1});
  RawClient sending(server.port());
  sending.say(
      request_of("POST /a", server.port(), "Content-Length: 2\r\nExpect: 100-continue\r\n"));
  EXPECT_EQ(sending.heard().status, 100);

  RawClient late(server.port());

  EXPECT_TRUE(late.hears_it_close());
  sending.say("ok");
  EXPECT_EQ(sending.heard().body, "POST /a|ok");
}

TEST_F(LimitsOfAServer, EndsConnectionsThatAreTooSlow) {
  const HttpServer server =
      begun({.idle_time = 50ms, .header_time = 50ms, .body_time = 50ms, .last_words_time = 50ms});
  RawClient idle(server.port());
  RawClient half_a_header(server.port());
  RawClient half_a_body(server.port());

  half_a_header.say("GET / HTTP/1.1\r\n");
  half_a_body.say(request_of("POST /", server.port(), "Content-Length: 9\r\n", "half"));

  EXPECT_TRUE(idle.hears_it_close());
  EXPECT_TRUE(half_a_header.hears_it_close());
  EXPECT_TRUE(half_a_body.hears_it_close());
}

TEST_F(LimitsOfAServer, EndsAConnectionThatDoesNotTakeItsAnswer) {
  const std::string large(std::size_t{64} * 1024 * 1024, 'x');
  const HttpServer server =
      begun({.writing_time = 100ms},
            {.admit = [](const HttpRequest&) { return Admission{}; },
             .answer = [&](const HttpRequest&) { return HttpResponse{.body = large}; }});
  RawClient client(server.port());
  client.say(request_of("GET /", server.port()));

  // A second request behind it is never answered: the connection ends first.
  while (client.say(request_of("GET /", server.port()))) std::this_thread::yield();

  EXPECT_LT(client.heard().body.size(), large.size());
}

}  // namespace
}  // namespace keenfall::server
