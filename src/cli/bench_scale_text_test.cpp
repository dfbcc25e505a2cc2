#include "cli/bench_scale_text.h"

#include "cli/widest_line.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::cli {
namespace {

using scale::Connection;
using scale::ScaleState;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

constexpr Look kEighty = {.width = 80};

ScaleState reading(const std::string& line) {
  return {.connection = Connection::hearing,
          .newest = scale::SeenReading{.reading = scale::reading_of_line(line).value()}};
}

std::string said(const ScaleState& before, const ScaleState& now) {
  return scale_news_text(before, now, kEighty);
}

TEST(BenchScaleText, AReadingStandsBesideTheLineItWasReadFrom) {
  EXPECT_EQ(said({}, reading("ST,GS,+  104.2 g\r\n")),
            "       104.2 g  stable    \"ST,GS,+  104.2 g\"\n");
  EXPECT_EQ(said({}, reading("  -12.50 N ?")), "      -12.50 N  unstable  \"  -12.50 N ?\"\n");
  EXPECT_EQ(said({}, reading("OL")), "      overload            \"OL\"\n");
}

TEST(BenchScaleText, TheSameReadingIsSaidOnce) {
  EXPECT_THAT(said(reading("104.2 g"), reading("104.2 g")), IsEmpty());
}

TEST(BenchScaleText, ALineThatIsNotReadIsSaidWithTheReason) {
  ScaleState now{.connection = Connection::hearing, .lines_refused = 1};
  now.newest_refusal = scale::reading_of_line("ST,GS,+ 104.2").error();

  const std::string text = said({.connection = Connection::hearing}, now);
  EXPECT_THAT(text, HasSubstr("Not read: \"ST,GS,+ 104.2\": behind the number no unit is said"));
  EXPECT_LE(widest_line(text), 80);
}

TEST(BenchScaleText, WhatHappensToTheScaleIsSaid) {
  const ScaleState hearing{.connection = Connection::hearing};
  const ScaleState silent{.connection = Connection::silent};
  const ScaleState unplugged{.connection = Connection::unplugged};

  EXPECT_THAT(said(hearing, silent), HasSubstr("sends nothing"));
  EXPECT_THAT(said(silent, hearing), HasSubstr("sends again"));
  EXPECT_THAT(said(hearing, unplugged), HasSubstr("The device is gone"));
  EXPECT_THAT(said(unplugged, {.connection = Connection::listening}), HasSubstr("is back"));
}

TEST(BenchScaleText, WhyItCannotBeOpenedAgainIsSaid) {
  const ScaleState unplugged{.connection = Connection::unplugged};
  ScaleState refused = unplugged;
  refused.problem = base::Problem{.sentence = "this user may not read the device",
                                  .place = {.file = "/dev/ttyUSB0"}};

  EXPECT_THAT(said(unplugged, refused),
              HasSubstr("cannot be opened yet: /dev/ttyUSB0: this user may not read the device"));
}

TEST(BenchScaleText, APressIsSaidWithItsCountAndNote) {
  const scale::HeldReading held{.number = 214.5,
                                .unit = "g",
                                .samples = 9,
                                .peak = scale::HeldPeak{.rise_per_s = 120},
                                .note = "Press more slowly."};

  EXPECT_EQ(held_text(held, {.width = 120}),
            "Peak of the press: 214.5 g, with 9 values above half of it, rising by 120 g a second. "
            "Press more slowly.\n");
}

TEST(BenchScaleText, AValueThatSettledIsSaid) {
  EXPECT_EQ(
      held_text({.kind = scale::HoldKind::stable, .number = 2, .unit = "N", .samples = 1}, kEighty),
      "Settled: 2 N.\n");
  EXPECT_EQ(
      held_text({.kind = scale::HoldKind::stable, .number = 2, .unit = "N", .samples = 6}, kEighty),
      "Settled: 2 N, 6 values that agree.\n");
}

}  // namespace
}  // namespace keenfall::cli
