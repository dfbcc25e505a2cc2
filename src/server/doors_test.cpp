// The doors of a server: the loopback one, the one for a network, and TLS.
#include "server/echoing_server_test.h"
#include "server/made_certificate_test.h"
#include "server/own_folder_test.h"

#include <gmock/gmock.h>
#include <boost/asio/connect.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/read.hpp>
#include <boost/asio/ssl.hpp>
#include <boost/asio/write.hpp>

#include <string>

namespace keenfall::server {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;
using namespace std::chrono_literals;
namespace asio = boost::asio;

class Doors : public ::testing::Test {
 protected:
  testing::OwnFolder scratch_{"doors"};
  std::string folder_ = scratch_.path();
};

HttpServer opened(const Door& door) {
  return std::move(HttpServer::begun(door, testing::echo()).value());
}

std::string asking_at(const std::string& host, std::uint16_t port) {
  return "GET /x HTTP/1.1\r\nHost: " + host + ":" + std::to_string(port) +
         "\r\nConnection: close\r\n\r\n";
}

// Its status by an address of this machine.
int status_at(const HttpServer& server, const char* address, const std::string& host) {
  testing::RawClient client(server.port(), address);
  client.say(asking_at(host, server.port()));
  return client.heard().status;
}

// What is answered through TLS of at most that version; why not, else.
std::string by_tls(std::uint16_t port, int newest = TLS1_3_VERSION) {
  asio::io_context io;
  asio::ssl::context tls(asio::ssl::context::tls_client);
  SSL_CTX_set_security_level(tls.native_handle(), 0);
  SSL_CTX_set_max_proto_version(tls.native_handle(), newest);
  asio::ssl::stream<asio::ip::tcp::socket> stream(io, tls);
  boost::system::error_code fault;
  stream.lowest_layer().connect({asio::ip::address_v4::loopback(), port}, fault);
  if (!fault) stream.handshake(asio::ssl::stream_base::client, fault);
  if (!fault) asio::write(stream, asio::buffer(asking_at("bench.example", port)), fault);
  if (fault) return "no: " + fault.message();
  std::string answer;
  asio::read(stream, asio::dynamic_buffer(answer), fault);
  return answer;
}

TEST_F(Doors, AreAtTheLoopbackAddressAlone) {
  const HttpServer server = opened({.port = 0});

  EXPECT_EQ(status_at(server, "127.0.0.1", "127.0.0.1"), 200);
  EXPECT_FALSE(testing::RawClient(server.port(), "127.0.0.2").is_connected());
}

TEST_F(Doors, ForANetworkAnswerUnderTheAddressThatWasReached) {
  const HttpServer server = opened({.port = 0, .is_for_network = true, .names = {"bench.example"}});

  EXPECT_EQ(status_at(server, "127.0.0.2", "127.0.0.2"), 200);
  EXPECT_EQ(status_at(server, "127.0.0.2", "bench.example"), 200);
  EXPECT_EQ(status_at(server, "127.0.0.2", "127.0.0.1"), 403);
  EXPECT_EQ(status_at(server, "127.0.0.2", "keenfall.example"), 403);
}

TEST_F(Doors, WithACertificateSpeakTlsAndNothingElse) {
  const HttpServer server = opened(
      {.port = 0, .names = {"bench.example"}, .certificate = testing::made_certificate(folder_)});

  EXPECT_THAT(by_tls(server.port()), StartsWith("HTTP/1.1 200 OK\r\n"));
  EXPECT_THAT(by_tls(server.port(), TLS1_2_VERSION), StartsWith("HTTP/1.1 200 OK\r\n"));
  EXPECT_THAT(by_tls(server.port(), TLS1_1_VERSION), StartsWith("no: "));
  EXPECT_EQ(status_at(server, "127.0.0.1", "127.0.0.1"), 0);
}

TEST_F(Doors, EndWhoeverDoesNotShakeHands) {
  const auto server =
      HttpServer::begun({.port = 0, .certificate = testing::made_certificate(folder_)},
                        testing::echo(),
                        {.header_time = 100ms});
  testing::RawClient silent(server->port());

  EXPECT_TRUE(silent.hears_it_close());
}

TEST_F(Doors, SayWhyACertificateCannotBeUsed) {
  const Certificate own = testing::made_certificate(folder_);
  const Certificate other = testing::made_certificate(folder_, "other");

  for (const Certificate& wrong : {Certificate{own.chain_file, other.key_file},
                                   Certificate{own.chain_file, own.chain_file},
                                   Certificate{own.key_file, own.key_file},
                                   Certificate{folder_ + "/none.pem", own.key_file}}) {
    const auto server = HttpServer::begun({.port = 0, .certificate = wrong}, testing::echo());
    ASSERT_FALSE(server);
    EXPECT_THAT(server.error().sentence, HasSubstr(" cannot be used: "));
    EXPECT_THAT(server.error().place.file, StartsWith(folder_));
  }
}

}  // namespace
}  // namespace keenfall::server
