#include "scale/live_scale.h"

#include "scale/pseudo_terminal_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace keenfall::scale {
namespace {

using std::chrono::milliseconds;
using ::testing::HasSubstr;
using testing::PseudoTerminal;

constexpr milliseconds kForLong{60000};
constexpr milliseconds kSoon{20};
constexpr const char* kNewLine = "\r\n";  // what is heard first may be a line's tail

LiveScale::Settings scale_at(const std::string& path) {
  return {.port = {.path = path}, .silent_after = kForLong, .try_again_after = kSoon};
}

// Waits until it is so. A test that waits for ever is ended by its time limit.
ScaleState once(const LiveScale& scale, const std::function<bool(const ScaleState&)>& is_so) {
  ScaleState state = scale.state();
  while (!is_so(state)) state = scale.wait_for_news(state.news, kForLong);
  return state;
}

bool has_held(const ScaleState& state) { return state.held.has_value(); }

auto has_read(std::size_t lines) {
  return [lines](const ScaleState& state) { return state.lines_read >= lines; };
}

auto is_now(Connection connection) {
  return [connection](const ScaleState& state) { return state.connection == connection; };
}

// A device's name that stays while what it names comes and goes.
class Socket {
 public:
  Socket() : path_(std::filesystem::temp_directory_path() / name()) {}
  Socket(const Socket&) = delete;
  Socket& operator=(const Socket&) = delete;
  Socket(Socket&&) = delete;
  Socket& operator=(Socket&&) = delete;
  ~Socket() { take_out(); }

  [[nodiscard]] std::string path() const { return path_.string(); }
  void take_out() const { std::filesystem::remove(path_); }
  void put_in(const PseudoTerminal& scale) const {
    take_out();
    std::filesystem::create_symlink(scale.path(), path_);
  }

 private:
  static std::string name() {
    return "keenfall-scale-" + std::to_string(getpid()) + "-" +
           ::testing::UnitTest::GetInstance()->current_test_info()->name();
  }
  std::filesystem::path path_;
};

TEST(LiveScale, TellsTheNewestReading) {
  const PseudoTerminal device;
  const LiveScale scale(scale_at(device.path()));
  EXPECT_EQ(scale.state().connection, Connection::listening);
  EXPECT_FALSE(scale.state().newest);

  device.send(std::string(kNewLine) + "ST,GS,+  104.2 g\r\nUS,GS,+  104.3 g\r\n");

  const ScaleState state = once(scale, has_read(2));
  EXPECT_EQ(state.connection, Connection::hearing);
  EXPECT_EQ(state.newest->reading.number, 104.3);
  EXPECT_EQ(state.newest->reading.line, "US,GS,+  104.3 g");
  EXPECT_GE(state.now_s, state.newest->at_s);
}

TEST(LiveScale, JoinsPieces) {
  const PseudoTerminal device;
  const LiveScale scale(scale_at(device.path()));

  device.send(kNewLine);
  for (const std::string piece : {"ST,G", "S,+  10", "4.2", " g", "\r"}) {
    const auto news = scale.state().news;
    device.send(piece);
    (void)scale.wait_for_news(news, kForLong);
  }

  EXPECT_EQ(once(scale, has_read(1)).newest->reading.number, 104.2);
}

TEST(LiveScale, WhatIsHeardFirstMayBeATail) {
  const PseudoTerminal device;
  const LiveScale scale(scale_at(device.path()));

  device.send("4.2 g\r\n104.3 g\r\n");

  const ScaleState state = once(scale, has_read(1));
  EXPECT_EQ(state.newest->reading.number, 104.3);
}

TEST(LiveScale, ReadsSevenBitsWithParityWhicheverFormatIsSet) {
  for (const DataFormat format : {DataFormat::bits_8_no_parity, DataFormat::bits_7_even_parity}) {
    const PseudoTerminal device;
    LiveScale::Settings settings = scale_at(device.path());
    settings.port.format = format;
    const LiveScale scale(settings);

    device.send("\x8D\n\xB1\xB2.5 \x4E\x8D\n");  // 12.5 N, by the bits: 1 B1, 2 B2, 5 35, N 4E

    const ScaleState state =
        once(scale, [](const ScaleState& s) { return s.lines_read + s.lines_refused > 0; });
    EXPECT_EQ(state.lines_refused, 1U);  // the blank lacks its parity bit
    device.send("\xB1\xB2.5\xA0N\x8D\n");
    EXPECT_EQ(once(scale, has_read(1)).newest->reading.number, 12.5);
  }
}

TEST(LiveScale, NoiseIsSurvivedAndSaid) {
  const PseudoTerminal device;
  const LiveScale scale(scale_at(device.path()));
  std::string noise;
  for (int i = 0; i < 3000; ++i) noise += static_cast<char>((i * 7919 + i / 13) % 256);

  device.send(kNewLine + noise + kNewLine + std::string(1000, 'x') + kNewLine);
  const ScaleState told = once(scale, [](const ScaleState& state) {
    return state.newest_refusal &&
           state.newest_refusal->sentence.find("longer") != std::string::npos;
  });
  device.send("104.2 g\r\n");

  EXPECT_GT(told.lines_refused, 0U);
  const ScaleState state = once(scale, has_read(1));
  EXPECT_EQ(state.newest->reading.number, 104.2);
  EXPECT_FALSE(state.newest_refusal);
}

TEST(LiveScale, ARefusedLineIsToldWithItsReason) {
  const PseudoTerminal device;
  const LiveScale scale(scale_at(device.path()));

  device.send(std::string(kNewLine) + "104.2\r\n");

  const ScaleState state =
      once(scale, [](const ScaleState& told) { return told.lines_refused > 0; });
  EXPECT_EQ(state.newest_refusal->place.found, "104.2");
  EXPECT_FALSE(state.newest);
}

TEST(LiveScale, SilenceIsTold) {
  const PseudoTerminal device;
  LiveScale::Settings settings = scale_at(device.path());
  settings.silent_after = kSoon;
  const LiveScale scale(settings);

  (void)once(scale, is_now(Connection::silent));
  device.send(std::string(kNewLine) + "104.2 g\r\n");

  EXPECT_EQ(once(scale, has_read(1)).newest->reading.number, 104.2);
  EXPECT_EQ(once(scale, is_now(Connection::silent)).newest->reading.number, 104.2);
}

TEST(LiveScale, ADeviceThatIsNotThereIsWaitedFor) {
  const Socket socket;
  const LiveScale scale(scale_at(socket.path()));
  EXPECT_EQ(scale.state().connection, Connection::cannot_open);
  EXPECT_THAT(scale.state().problem->sentence, HasSubstr("no such device"));

  const PseudoTerminal device;
  socket.put_in(device);

  EXPECT_FALSE(once(scale, is_now(Connection::listening)).problem);
}

TEST(LiveScale, AScaleThatWasUnpluggedComesBack) {
  const Socket socket;
  PseudoTerminal first;
  socket.put_in(first);
  const LiveScale scale(scale_at(socket.path()));
  first.send(std::string(kNewLine) + "104.2 g\r\n10");
  (void)once(scale, has_read(1));

  socket.take_out();
  first.unplug();
  const ScaleState gone = once(scale, [](const ScaleState& state) {
    return state.connection == Connection::unplugged && state.problem;
  });
  EXPECT_THAT(gone.problem->sentence, HasSubstr("no such device"));
  EXPECT_FALSE(gone.newest);

  const PseudoTerminal second;
  socket.put_in(second);
  (void)once(scale, is_now(Connection::listening));
  second.send(std::string(kNewLine) + "104.5 g\r\n");

  EXPECT_EQ(once(scale, has_read(2)).newest->reading.number, 104.5);
}

TEST(LiveScale, AReadingThatIsArmedForIsGivenOnce) {
  const PseudoTerminal device;
  LiveScale scale(scale_at(device.path()));
  ASSERT_FALSE(scale.arm({.kind = HoldKind::stable}));
  EXPECT_TRUE(scale.state().is_armed);
  EXPECT_FALSE(scale.take_held());

  device.send(std::string(kNewLine) + "US,GS,+  99.0 g\r\nST,GS,+  104.2 g\r\nST,GS,+ 300.0 g\r\n");
  EXPECT_EQ(once(scale, has_held).held->line, "ST,GS,+  104.2 g");

  EXPECT_EQ(scale.take_held().value().number, 104.2);
  EXPECT_FALSE(scale.take_held());
  EXPECT_FALSE(scale.state().is_armed);
}

TEST(LiveScale, APressIsFollowedWhileItGoesOn) {
  const PseudoTerminal device;
  LiveScale scale(scale_at(device.path()));
  ASSERT_FALSE(scale.arm({}));

  device.send(std::string(kNewLine) + "0 g\r\n0 g\r\n80 g\r\n150 g\r\n");
  const ScaleState pressing = once(scale, has_read(4));
  device.send("170 g\r\n0 g\r\n");

  EXPECT_EQ(pressing.stage, PressStage::pressing);
  EXPECT_EQ(pressing.highest, 150);
  EXPECT_EQ(once(scale, has_held).held->number, 170);
}

TEST(LiveScale, UnpluggedDuringAPressItWaitsForAnother) {
  PseudoTerminal device;
  LiveScale scale(scale_at(device.path()));
  ASSERT_FALSE(scale.arm({}));
  device.send(std::string(kNewLine) + "0 g\r\n0 g\r\n80 g\r\n");
  (void)once(scale, has_read(3));

  device.unplug();

  const ScaleState state = once(scale, is_now(Connection::unplugged));
  EXPECT_TRUE(state.is_armed);
  EXPECT_EQ(state.stage, PressStage::waiting);
  EXPECT_THAT(state.hold_trouble, HasSubstr("lost during the press"));
}

TEST(LiveScale, WhatIsHeldSurvivesUnplugging) {
  PseudoTerminal device;
  LiveScale scale(scale_at(device.path()));
  ASSERT_FALSE(scale.arm({.kind = HoldKind::stable}));
  device.send(std::string(kNewLine) + "ST,GS,+  104.2 g\r\n");
  (void)once(scale, has_held);

  device.unplug();
  (void)once(scale, is_now(Connection::unplugged));

  EXPECT_EQ(scale.take_held().value().number, 104.2);
}

TEST(LiveScale, DisarmedItHoldsNothing) {
  const PseudoTerminal device;
  LiveScale scale(scale_at(device.path()));
  ASSERT_FALSE(scale.arm({.kind = HoldKind::stable}));
  scale.disarm();

  device.send(std::string(kNewLine) + "ST,GS,+  104.2 g\r\n");

  EXPECT_FALSE(once(scale, has_read(1)).held);
  EXPECT_FALSE(scale.take_held());
}

TEST(LiveScale, AFullPressThatIsNoneIsRefused) {
  LiveScale scale(scale_at("/dev/null"));

  EXPECT_TRUE(scale.arm({.full_press = materials::Quantity{-1, "gf"}}));
  EXPECT_FALSE(scale.state().is_armed);
}

TEST(LiveScale, ManyMayAskWhileItReads) {
  const PseudoTerminal device;
  LiveScale scale(scale_at(device.path()));
  std::vector<std::thread> askers;
  for (int i = 0; i < 3; ++i) {
    askers.emplace_back([&] {
      (void)scale.arm({.kind = HoldKind::stable});
      (void)once(scale, has_read(200));
      (void)scale.take_held();
      scale.disarm();
    });
  }

  device.send(kNewLine);
  for (int i = 0; i < 200; ++i) device.send("ST,GS,+  104.2 g\r\n");
  for (std::thread& asker : askers) asker.join();

  EXPECT_FALSE(scale.state().is_armed);
}

TEST(LiveScale, ItEndsWhileNobodySends) {
  const PseudoTerminal device;
  const auto before = std::chrono::steady_clock::now();
  { const LiveScale scale(scale_at(device.path())); }
  { const LiveScale scale(scale_at("/dev/keenfall-no-such-scale")); }

  EXPECT_LT(std::chrono::steady_clock::now() - before, kForLong);
}

}  // namespace
}  // namespace keenfall::scale
