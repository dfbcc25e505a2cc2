#include "scale/port.h"

#include "scale/pseudo_terminal_test.h"

#include <fcntl.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <termios.h>
#include <unistd.h>

#include <chrono>
#include <cstddef>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <thread>
#include <utility>

namespace keenfall::scale {
namespace {

using std::chrono::milliseconds;
using ::testing::HasSubstr;
using testing::PseudoTerminal;

constexpr milliseconds kAtOnce{0};
constexpr milliseconds kPatience{60000};

PortSettings port_at(const std::string& path, int baud = 9600) {
  return {.path = path, .baud = baud};
}

// As many bytes as these, in however many pieces they come.
std::string heard(Port& port, std::size_t bytes) {
  std::string all;
  while (all.size() < bytes && port.read(all, kPatience, {}) == PortEvent::heard) {
  }
  return all;
}

termios attributes_of(const std::string& path) {
  termios found{};
  const int line = open(path.c_str(), O_RDWR | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
  tcgetattr(line, &found);
  close(line);
  return found;
}

TEST(Port, HearsWhatIsSentByteForByte) {
  const PseudoTerminal scale;
  auto port = Port::open(port_at(scale.path())).value();
  const std::string sent = "\x03\x11\x13 ST\r\r\n\n\x7F\x80\xFE";

  scale.send(sent);

  EXPECT_EQ(heard(port, sent.size()), sent);
}

TEST(Port, ASpeedOf300To19200IsTaken) {
  const PseudoTerminal scale;
  for (const int baud : known_speeds()) {
    EXPECT_TRUE(Port::open(port_at(scale.path(), baud))) << baud;
  }
}

TEST(Port, TheLineHasTheSpeedThatWasAskedFor) {
  const PseudoTerminal scale;
  for (const auto& [baud, speed] : {std::pair(300, B300), std::pair(19200, B19200)}) {
    const auto port = Port::open(port_at(scale.path(), baud)).value();
    const termios line = attributes_of(scale.path());

    EXPECT_EQ(cfgetispeed(&line), static_cast<speed_t>(speed));
  }
}

TEST(Port, AnotherSpeedIsRefused) {
  const PseudoTerminal scale;

  EXPECT_THAT(Port::open(port_at(scale.path(), 12345)).error().sentence, HasSubstr("12345"));
}

TEST(Port, SevenBitsWithParityAreTaken) {
  const PseudoTerminal scale;
  auto port = Port::open({.path = scale.path(), .format = DataFormat::bits_7_even_parity}).value();

  scale.send("104.2 g\r\n");

  EXPECT_EQ(heard(port, 9), "104.2 g\r\n");
}

TEST(Port, TheLineIsLeftAsItWasFound) {
  const PseudoTerminal scale;
  const termios before = attributes_of(scale.path());
  { const auto port = Port::open(port_at(scale.path(), 300)).value(); }

  const termios after = attributes_of(scale.path());
  EXPECT_EQ(after.c_lflag, before.c_lflag);
  EXPECT_EQ(after.c_iflag, before.c_iflag);
  EXPECT_EQ(cfgetispeed(&after), cfgetispeed(&before));
}

TEST(Port, NothingIsHeardWhereNothingIsSent) {
  const PseudoTerminal scale;
  auto port = Port::open(port_at(scale.path())).value();
  std::string bytes;

  EXPECT_EQ(port.read(bytes, kAtOnce, {}), PortEvent::nothing);
  EXPECT_EQ(bytes, "");
}

TEST(Port, WaitingEndsWhenItIsAskedTo) {
  const PseudoTerminal scale;
  auto port = Port::open(port_at(scale.path())).value();
  std::stop_source stop;
  std::optional<PortEvent> event;
  std::thread waiting([&] {
    std::string bytes;
    event = port.read(bytes, kPatience, stop.get_token());
  });

  stop.request_stop();
  waiting.join();

  EXPECT_EQ(event, PortEvent::nothing);
}

TEST(Port, ALineThatIsUnpluggedIsGone) {
  PseudoTerminal scale;
  auto port = Port::open(port_at(scale.path())).value();
  std::string bytes;

  scale.unplug();

  EXPECT_EQ(port.read(bytes, kPatience, {}), PortEvent::gone);
  EXPECT_EQ(port.read(bytes, kPatience, {}), PortEvent::gone);
}

TEST(Port, ADeviceThatIsNotThereIsSaidSo) {
  const base::Problem problem = Port::open(port_at("/dev/keenfall-no-such-scale")).error();

  EXPECT_EQ(problem.kind, base::ProblemKind::unreadable);
  EXPECT_EQ(problem.place.file, "/dev/keenfall-no-such-scale");
  EXPECT_THAT(problem.sentence, HasSubstr("no such device"));
}

TEST(Port, WhatIsNoSerialLineIsSaidSo) {
  for (const std::string path : {"/dev/null", "/"}) {
    EXPECT_THAT(Port::open(port_at(path)).error().sentence, HasSubstr("no serial line")) << path;
  }
}

// In a process of another user, since root may read everything.
TEST(Port, ADeviceThatMayNotBeReadNamesTheGroup) {
  const PseudoTerminal scale;
  ASSERT_EQ(chmod(scale.path().c_str(), 0), 0);
  const pid_t child = fork();
  if (child == 0) {
    constexpr uid_t kNobody = 65534;
    if (geteuid() == 0 && setuid(kNobody) != 0) _exit(2);
    const auto port = Port::open(port_at(scale.path()));
    _exit(!port && port.error().accepted.find("dialout") != std::string::npos ? 0 : 1);
  }
  int status = -1;
  waitpid(child, &status, 0);

  EXPECT_EQ(status, 0);
}

TEST(Port, ALineIsReadByOneAtATime) {
  const PseudoTerminal scale;
  auto first = std::make_unique<Port>(Port::open(port_at(scale.path())).value());

  EXPECT_THAT(Port::open(port_at(scale.path())).error().sentence, HasSubstr("another program"));

  first.reset();
  EXPECT_TRUE(Port::open(port_at(scale.path())));
}

TEST(Port, AProcessThatDiesHoldsNothing) {
  const PseudoTerminal scale;
  const pid_t child = fork();
  if (child == 0) {
    const auto port = Port::open(port_at(scale.path()));
    _exit(port ? 0 : 1);  // no destructor runs
  }
  int status = -1;
  waitpid(child, &status, 0);
  ASSERT_EQ(status, 0);

  EXPECT_TRUE(Port::open(port_at(scale.path())));
}

TEST(Port, ADataFormatIsReadInEitherCase) {
  EXPECT_EQ(data_format_of("8n1").value(), DataFormat::bits_8_no_parity);
  EXPECT_EQ(data_format_of("7E1").value(), DataFormat::bits_7_even_parity);
  EXPECT_THAT(data_format_of("8E2").error().sentence, HasSubstr("8N1 or 7E1"));
}

}  // namespace
}  // namespace keenfall::scale
