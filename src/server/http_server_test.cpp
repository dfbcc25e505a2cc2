// The server as bytes on a socket see it.
#include "server/http_server.h"

#include "server/echoing_server_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <future>
#include <new>
#include <stdexcept>
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

class AServer : public testing::EchoingServer {};

TEST_F(AServer, AnswersWhatItIsAsked) {
  const RawAnswer answer = asked("GET /a%20b?c=d");

  EXPECT_EQ(answer.status, 200);
  EXPECT_EQ(answer.body, "GET /a b c=d|");
  EXPECT_THAT(answer.head, HasSubstr("content-type: text/plain\r\n"));
}

TEST_F(AServer, TakesABodyWholeOrInChunks) {
  EXPECT_EQ(asked("POST /a", "Content-Length: 5\r\n", "hello").body, "POST /a|hello");
  EXPECT_EQ(
      asked("PUT /a", "Transfer-Encoding: chunked\r\n", "3\r\nhel\r\n2\r\nlo\r\n0\r\n\r\n").body,
      "PUT /a|hello");
}

TEST_F(AServer, GoesOnWithTheSameConnection) {
  RawClient client(server_.port());

  for (const char* path : {"/one", "/two", "/three"}) {
    client.say(request_of(std::string("GET ") + path, server_.port()));
    EXPECT_EQ(client.heard().body, std::string("GET ") + path + "|");
  }
}

TEST_F(AServer, AnswersRequestsThatComeTogetherInTurn) {
  RawClient client(server_.port());

  client.say(request_of("POST /one", server_.port(), "Content-Length: 1\r\n", "1") +
             request_of("GET /two", server_.port()));

  EXPECT_EQ(client.heard().body, "POST /one|1");
  EXPECT_EQ(client.heard().body, "GET /two|");
}

TEST_F(AServer, AnswersHeadWithTheHeadAlone) {
  RawClient client(server_.port());

  client.say(request_of("HEAD /a", server_.port()));
  const RawAnswer head = client.heard(false);
  client.say(request_of("GET /b", server_.port()));

  EXPECT_THAT(head.head, HasSubstr("content-length: 8\r\n"));  // "HEAD /a|"
  EXPECT_EQ(client.heard().body, "GET /b|");
}

TEST_F(AServer, TellsWhoeverWaitsToGoOn) {
  RawClient client(server_.port());
  client.say(
      request_of("POST /a", server_.port(), "Content-Length: 2\r\nExpect: 100-continue\r\n"));

  const RawAnswer leave = client.heard();
  client.say("ok");

  EXPECT_EQ(leave.status, 100);
  EXPECT_EQ(client.heard().body, "POST /a|ok");
}

TEST_F(AServer, TellsWhoeverWaitsToGoOnHoweverTheyWriteIt) {
  RawClient client(server_.port());
  client.say(
      request_of("POST /a", server_.port(), "Content-Length: 2\r\nExpect: 100-Continue\r\n"));

  EXPECT_EQ(client.heard().status, 100);
}

TEST_F(AServer, AnswersWithAFaultWhatCannotBeSent) {
  const std::string much(100'000, 'x');
  const HttpServer server =
      begun({},
            {.admit = [](const HttpRequest&) { return Admission{}; },
             .answer =
                 [&](const HttpRequest& request) {
                   if (request.path == "/a") return HttpResponse{.body = "ok"};
                   return HttpResponse{.headers = {{.name = "X-Much", .text = much}}};
                 }});
  RawClient client(server.port());

  client.say(request_of("GET /much", server.port()));
  const RawAnswer fault = client.heard();
  client.say(request_of("GET /a", server.port()));

  EXPECT_EQ(fault.status, 500);
  EXPECT_THAT(fault.body, HasSubstr("This is a fault in Keenfall"));
  EXPECT_EQ(client.heard().body, "ok");
}

TEST_F(AServer, GoesOnThoughSomebodyThrows) {
  const HttpServer server = begun({},
                                  {.admit =
                                       [](const HttpRequest& request) {
                                         if (request.path == "/admit") throw std::bad_alloc();
                                         return Admission{};
                                       },
                                   .answer =
                                       [](const HttpRequest& request) {
                                         if (request.path == "/answer")
                                           throw std::runtime_error("a slip");
                                         return HttpResponse{.body = "ok"};
                                       }});
  const auto asked_at = [&](const std::string& path) {
    return answer_to(server.port(), request_of("GET " + path, server.port()));
  };

  EXPECT_EQ(asked_at("/admit").status, 503);
  EXPECT_EQ(asked_at("/answer").status, 500);
  EXPECT_EQ(asked_at("/a").body, "ok");
}

TEST_F(AServer, LetsABrowserDoAsLittleAsThePagesNeed) {
  const std::string head = asked("GET /").head;

  EXPECT_THAT(head, HasSubstr("content-security-policy: default-src 'none'; script-src 'self'; "));
  EXPECT_THAT(head, HasSubstr("form-action 'none'; base-uri 'none'; frame-ancestors 'none'\r\n"));
  EXPECT_THAT(head, HasSubstr("x-content-type-options: nosniff\r\n"));
  EXPECT_THAT(head, HasSubstr("referrer-policy: no-referrer\r\n"));
  EXPECT_THAT(head, HasSubstr("cross-origin-opener-policy: same-origin\r\n"));
  EXPECT_THAT(head, HasSubstr("cross-origin-resource-policy: same-origin\r\n"));
  EXPECT_THAT(head, HasSubstr("cache-control: no-store\r\n"));
  EXPECT_THAT(head, ::testing::Not(HasSubstr("access-control")));
}

TEST_F(AServer, SendsTheSameStrictHeadersWithARefusal) {
  const RawAnswer answer = told("nonsense\r\n\r\n");

  EXPECT_EQ(answer.status, 400);
  EXPECT_THAT(answer.head, HasSubstr("content-security-policy: default-src 'none'"));
}

TEST_F(AServer, RefusesAForeignHostOriginOrSite) {
  const std::string own = "Host: 127.0.0.1:" + std::to_string(server_.port()) + "\r\n";

  EXPECT_EQ(told("GET / HTTP/1.1\r\nHost: keenfall.example\r\n\r\n").status, 403);
  EXPECT_EQ(told("GET / HTTP/1.1\r\n\r\n").status, 400);
  EXPECT_EQ(told("GET / HTTP/1.0\r\n\r\n").status, 400);
  EXPECT_EQ(told("GET / HTTP/1.1\r\n" + own + own + "\r\n").status, 400);
  EXPECT_EQ(told("GET / HTTP/1.1\r\n" + own + "Host: keenfall.example\r\n\r\n").status, 400);
  EXPECT_EQ(asked("GET /", "Origin: http://keenfall.example\r\n").status, 403);
  EXPECT_EQ(asked("GET /", "Origin: null\r\n").status, 403);
  EXPECT_EQ(asked("GET /", "Sec-Fetch-Site: cross-site\r\n").status, 403);
}

TEST_F(AServer, RefusesAMethodItDoesNotKnow) {
  for (const char* method : {"OPTIONS", "TRACE", "PATCH", "CONNECT", "PROPFIND", "BREW", "get"}) {
    const RawAnswer answer = asked(std::string(method) + " /a");
    EXPECT_EQ(answer.status, 501) << method;
    EXPECT_TRUE(answer.is_last);
  }
}

class AMalformedRequest : public AServer, public ::testing::WithParamInterface<std::string> {};

TEST_P(AMalformedRequest, IsRefusedAndTheConnectionClosed) {
  RawClient client(server_.port());
  client.say(GetParam());
  client.say_no_more();

  const RawAnswer answer = client.heard();

  EXPECT_EQ(answer.status, 400);
  EXPECT_TRUE(answer.is_last);
  EXPECT_TRUE(client.hears_it_close());
}

INSTANTIATE_TEST_SUITE_P(
    HttpServers,
    AMalformedRequest,
    ::testing::Values("\x16\x03\x01\x02\x01\x01",  // how TLS begins
                      "GET\r\n\r\n",
                      "GET / HTTP/2.0\r\n\r\n",
                      "GET / HTTP/9.9\r\n\r\n",
                      "GET / HTTP/1.1 \r\n\r\n",
                      "GET  / HTTP/1.1\r\nHost: a\r\n\r\n",
                      "GET / HTTP/1.1\r\nno colon\r\n\r\n",
                      "GET / HTTP/1.1\r\nHost : a\r\n\r\n",
                      std::string("GET / HTTP/1.1\r\nHo\0st: a\r\n\r\n", 29),
                      std::string("GET / HTTP/1.1\r\nHost: a\0\r\n\r\n", 29),
                      "POST / HTTP/1.1\r\nContent-Length: -1\r\n\r\n",
                      "POST / HTTP/1.1\r\nContent-Length: 1x\r\n\r\n",
                      "POST / HTTP/1.1\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n",
                      "POST / HTTP/1.1\r\nContent-Length: 99999999999999999999999\r\n\r\n",
                      "POST / HTTP/1.1\r\nContent-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n",
                      "POST / HTTP/1.1\r\nTransfer-Encoding: chunked\r\nContent-Length: 1\r\n\r\n",
                      "GET /../../etc/passwd HTTP/1.1\r\n\r\n",
                      "GET /%2e%2e/etc/passwd HTTP/1.1\r\n\r\n",
                      "GET /%00 HTTP/1.1\r\n\r\n",
                      "GET //etc/passwd HTTP/1.1\r\n\r\n",
                      "GET http://keenfall.example/ HTTP/1.1\r\n\r\n",
                      "GET * HTTP/1.1\r\n\r\n"));

TEST_F(AServer, RefusesChunksThatAreNone) {
  for (const char* body :
       {"zz\r\nhello", "5\r\nhelloXY\r\n", "-1\r\n", "\r\n", "5;\x01\r\nhello"}) {
    EXPECT_EQ(asked("POST /", "Transfer-Encoding: chunked\r\n", body).status, 400) << body;
  }
}

TEST_F(AServer, FindsAFreePortWhereTheUsualOneIsTaken) {
  const auto first = HttpServer::begun({}, echo());
  const auto second = HttpServer::begun({}, echo());

  ASSERT_TRUE(first && second);
  EXPECT_NE(first->port(), second->port());
  EXPECT_EQ(answer_to(second->port(), request_of("GET /", second->port())).status, 200);
}

TEST_F(AServer, DoesNotShareAPortThatWasAskedFor) {
  const auto second = HttpServer::begun({.port = server_.port()}, echo());

  ASSERT_FALSE(second);
  EXPECT_EQ(second.error().kind, base::ProblemKind::unreadable);
  EXPECT_EQ(second.error().place.column, "--port");
  EXPECT_THAT(second.error().sentence,
              HasSubstr("Port " + std::to_string(server_.port()) +
                        " of this machine cannot be listened at: "));
}

TEST_F(AServer, ListensOnNoOtherAddress) {
  EXPECT_TRUE(RawClient(server_.port(), "127.0.0.1").is_connected());
  EXPECT_FALSE(RawClient(server_.port(), "127.0.0.2").is_connected());
}

TEST_F(AServer, StopsAtOnceWhileConnectionsAreIdleOrHalfSent) {
  std::vector<RawClient> clients;
  for (int i = 0; i < 20; ++i) {
    clients.emplace_back(server_.port());
    if (i % 2 == 0) clients.back().say("POST /a HTTP/1.1\r\nHo");
  }
  EXPECT_EQ(asked("GET /").status, 200);

  const auto time = time_of([&] { server_.stop(); });

  EXPECT_LT(time, 500ms);
  for (RawClient& client : clients) EXPECT_TRUE(client.hears_it_close());
  EXPECT_FALSE(RawClient(server_.port()).is_connected());
}

TEST_F(AServer, SendsTheAnswerThatIsBeingMadeWhenItIsStopped) {
  std::promise<void> is_asked;
  std::promise<void> may_answer;
  HttpServer server = begun({},
                            {.admit = [](const HttpRequest&) { return Admission{}; },
                             .answer =
                                 [&](const HttpRequest&) {
                                   is_asked.set_value();
                                   may_answer.get_future().wait();
                                   return HttpResponse{.body = "made"};
                                 }});
  RawClient client(server.port());
  client.say(request_of("GET /", server.port()));
  is_asked.get_future().wait();

  std::thread stopping([&] { server.stop(); });
  may_answer.set_value();
  const RawAnswer answer = client.heard();
  stopping.join();

  EXPECT_EQ(answer.body, "made");
}

TEST_F(AServer, StopsThoughSomebodyDoesNotTakeTheirAnswer) {
  const std::string large(std::size_t{64} * 1024 * 1024, 'x');
  HttpServer server =
      begun({.last_words_time = 100ms},
            {.admit = [](const HttpRequest&) { return Admission{}; },
             .answer = [&](const HttpRequest&) { return HttpResponse{.body = large}; }});
  RawClient client(server.port());
  client.say(request_of("GET /", server.port()));
  const RawClient other(server.port());

  EXPECT_LT(time_of([&] { server.stop(); }), 2s);
}

TEST_F(AServer, IsAskedByManyAtOnce) {
  std::vector<std::thread> people;
  std::atomic<int> answered{0};
  for (int person = 0; person < 8; ++person) {
    people.emplace_back([&, person] {
      RawClient client(server_.port());
      for (int i = 0; i < 50; ++i) {
        const std::string path = "/" + std::to_string(person) + "/" + std::to_string(i);
        client.say(request_of("GET " + path, server_.port()));
        answered += client.heard().body == "GET " + path + "|" ? 1 : 0;
      }
    });
  }
  for (std::thread& person : people) person.join();

  EXPECT_EQ(answered, 400);
}

}  // namespace
}  // namespace keenfall::server
