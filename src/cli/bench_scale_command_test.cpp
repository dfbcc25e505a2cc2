#include "cli/bench_scale_command.h"

#include "scale/pseudo_terminal_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::cli {
namespace {

using scale::testing::PseudoTerminal;
using ::testing::HasSubstr;
using ::testing::StartsWith;

// What was said while the scale sent `sent`, until `awaited` was said.
struct Watched {
  Outcome outcome;
  std::string said;
};

Watched watched(std::vector<std::string> options,
                const std::string& sent,
                const std::string& awaited) {
  const PseudoTerminal device;
  Watched happened;
  Surroundings around;
  around.write_at_once = [&](const std::string& text) {
    if (happened.said.empty()) device.send("\r\n" + sent);
    happened.said += text;
  };
  around.is_stop_asked_for = [&] { return happened.said.find(awaited) != std::string::npos; };
  options.push_back(device.path());
  happened.outcome = bench_scale_command(options, around);
  return happened;
}

Outcome refusal(const std::vector<std::string>& words) {
  return bench_scale_command(words, Surroundings{});
}

TEST(BenchScaleCommand, ShowsWhatTheScaleSendsUntilItIsStopped) {
  const Watched happened = watched({}, "ST,GS,+  104.2 g\r\n", "104.2 g");

  EXPECT_THAT(happened.said, StartsWith("Listening at /dev/pts/"));
  EXPECT_THAT(happened.said, HasSubstr("104.2 g  stable"));
  EXPECT_EQ(happened.outcome.code, ExitCode::answered);
  EXPECT_EQ(happened.outcome.out, "Stopped.\n");
}

TEST(BenchScaleCommand, TakesSpeedFormatAndDecimalMark) {
  const Watched happened =
      watched({"--baud=300", "--format=7E1", "--decimal=comma"}, "1,104 kg\r\n", "1.104 kg");

  EXPECT_THAT(happened.said, HasSubstr("300 7E1"));
}

TEST(BenchScaleCommand, SaysThePeakOfEveryPress) {
  const Watched happened =
      watched({"--hold=peak"}, "0 g\r\n0 g\r\n60 g\r\n80 g\r\n0 g\r\n", "Peak of the press");

  EXPECT_THAT(happened.said, HasSubstr("Peak of the press: 80 g"));
}

TEST(BenchScaleCommand, SaysWhatSettled) {
  const Watched happened = watched({"--hold=stable"}, "ST,GS,+  104.2 g\r\n", "Settled");

  EXPECT_THAT(happened.said, HasSubstr("Settled: 104.2 g."));
}

TEST(BenchScaleCommand, EndsWhenNobodyReadsItAnyMore) {
  const PseudoTerminal device;
  Surroundings around;
  around.write_at_once = [](const std::string&) {};
  around.is_stop_asked_for = [] { return false; };
  around.is_output_gone = [] { return true; };

  EXPECT_EQ(bench_scale_command(std::vector{device.path()}, around).code, ExitCode::answered);
}

TEST(BenchScaleCommand, ADeviceThatIsNotThereEndsIt) {
  const Outcome outcome = refusal({"/dev/keenfall-no-such-scale"});

  EXPECT_EQ(outcome.code, ExitCode::file_trouble);
  EXPECT_THAT(outcome.err, HasSubstr("/dev/keenfall-no-such-scale: there is no such device"));
}

TEST(BenchScaleCommand, WithoutADeviceItSaysHowToNameOne) {
  const Outcome outcome = refusal({});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("keenfall scale /dev/ttyUSB0"));
}

TEST(BenchScaleCommand, WhatIsWrongWithOptionsIsSaidAtOnce) {
  const Outcome outcome =
      refusal({"/dev/null", "--baud=12345", "--format=8E2", "--decimal=dot", "--full-press=5mm"});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("--baud is 300,"));
  EXPECT_THAT(outcome.err, HasSubstr("--format: a data format is 8N1 or 7E1"));
  EXPECT_THAT(outcome.err, HasSubstr("--decimal is comma or point"));
  EXPECT_THAT(outcome.err, HasSubstr("--full-press"));
  EXPECT_THAT(refusal({"/dev/null", "--hold=fast"}).err, HasSubstr("--hold is peak or stable"));
}

}  // namespace
}  // namespace keenfall::cli
