#include "scale/line.h"

#include "materials/units.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::scale {
namespace {

using ::testing::HasSubstr;
using enum Stability;

// Plain-text shapes seen on common bench scales; common practice, no source.
struct Shape {
  std::string_view sent;
  double number = 0;
  std::string_view unit;
  int decimals = 0;
  Stability stability = not_said;
};

constexpr auto kShapes = std::to_array<Shape>({
    {"ST,GS,+  104.2 g\r\n", 104.2, "g", 1, stable},
    {"US,GS,+  104.2 g\r\n", 104.2, "g", 1, unstable},
    {"ST,NT,-   12.50 N\r\n", -12.5, "N", 2, stable},
    {"st,gs,+104.2g", 104.2, "g", 1, stable},
    {"ST,GS,104.2,g", 104.2, "g", 1, stable},
    {"ST,GS,+00104.2kg", 104.2, "kg", 1, stable},
    {"ST GS  0.230 lb", 0.23, "lb", 3, stable},
    {"    104.2 g ?\r\n", 104.2, "g", 1, unstable},
    {"?   104.2 g\r\n", 104.2, "g", 1, unstable},
    {"    104.2 g  \r\n", 104.2, "g", 1, not_said},
    {"    104.2g?", 104.2, "g", 1, unstable},
    {"+ 104.2  G S", 104.2, "g", 1, stable},
    {"+ 104.2  G U", 104.2, "g", 1, unstable},
    {"N +  104.2 g", 104.2, "g", 1, not_said},
    {"G     104.2 g", 104.2, "g", 1, not_said},
    {"S S     104.20 g", 104.2, "g", 2, stable},
    {"S D     104.20 g", 104.2, "g", 2, unstable},
    {"104.2 g", 104.2, "g", 1, not_said},
    {"104.2 g NT", 104.2, "g", 1, not_said},
    {"104.2 g N", 104.2, "g", 1, not_said},
    {"-0.35 kg", -0.35, "kg", 2, not_said},
    {"-   0,35 kg", -0.35, "kg", 2, not_said},
    {"0,230 kg", 0.23, "kg", 3, not_said},
    {"1104,2 g", 1104.2, "g", 1, not_said},
    {"12.5 N", 12.5, "N", 1, not_said},
    {"1.25 kgf", 1.25, "kgf", 2, not_said},
    {"1.25 kg-f", 1.25, "kgf", 2, not_said},
    {"125 gf", 125, "gf", 0, not_said},
    {"125. g", 125, "g", 0, not_said},
    {".5 lbs", 0.5, "lb", 1, not_said},
    {"3.68 OZ", 3.68, "oz", 2, not_said},
    {"W=  104.2 g", 104.2, "g", 1, not_said},
    {"Net: 104.2 g", 104.2, "g", 1, not_said},
    {"-0.0 g", 0, "g", 1, not_said},
    {"\x02  104.2 g\x03\r\n", 104.2, "g", 1, not_said},
    {"\r\nST,GS,\t104.2\tg", 104.2, "g", 1, stable},
});

TEST(ScaleLine, ReadsTheShapesThatBenchScalesSend) {
  for (const Shape& shape : kShapes) {
    const auto reading = reading_of_line(shape.sent);

    ASSERT_TRUE(reading) << shape.sent << ": " << base::in_words(reading.error());
    EXPECT_DOUBLE_EQ(reading->number.value(), shape.number) << shape.sent;
    EXPECT_EQ(reading->unit, shape.unit) << shape.sent;
    EXPECT_EQ(reading->decimals, shape.decimals) << shape.sent;
    EXPECT_EQ(reading->stability, shape.stability) << shape.sent;
    EXPECT_FALSE(reading->is_overload) << shape.sent;
  }
}

TEST(ScaleLine, ZeroHasNoSign) {
  EXPECT_FALSE(std::signbit(reading_of_line("-  0.0 g").value().number.value()));
}

TEST(ScaleLine, KeepsTheLineAsItWasSent) {
  EXPECT_EQ(reading_of_line("  ST,GS,+  104.2 g \r\n").value().line, "  ST,GS,+  104.2 g");
}

TEST(ScaleLine, AnOverloadHasNoNumber) {
  for (const std::string_view sent :
       {"OL,GS,+99999.9 g\r\n", "OL", "ol  ------ g", "ST,OL,+ 0.0 g", "   O-L  g", "+OL g"}) {
    const auto reading = reading_of_line(sent);

    ASSERT_TRUE(reading) << sent;
    EXPECT_TRUE(reading->is_overload) << sent;
    EXPECT_FALSE(reading->number) << sent;
  }
}

struct Refusal {
  std::string_view sent;
  std::string_view why;
};

constexpr auto kRefusals = std::to_array<Refusal>({
    {"104.2", "no unit is said"},
    {"ST,GS,+  104.2", "no unit is said"},
    {"104.2 S", "no unit is said"},
    {"g 104.2", "no unit is said"},
    {"104.2 pcs", "“pcs” is no unit of force or mass"},
    {"104.2 %", "“%” is no unit"},
    {"104.2 mm", "“mm” is no unit"},
    {"104.2 ct", "“ct” is no unit"},
    {"104.2 N/mm", "“N/mm” is no unit"},
    {"104.2 lb-ft", "“lb-ft” is no unit"},
    {"104.2 MN", "“MN” is no unit"},
    {"", "no number"},
    {"ST,GS,------ g", "no number"},
    {"g", "no number"},
    {"12 104.2 g", "more than one number"},
    {"1 lb 3.5 oz", "more than one number"},
    {"12:30:05 104.2 g", "more than one number"},
    {"104.2 g 104.3 g", "more than one number"},
    {"1e3 g", "more than one number"},
    {"104 .2 g", "more than one number"},
    {"104.2 g kg", "two units"},
    {"lb 104.2 g", "two units"},
    {"1,104 kg", "two ways"},
    {"1,104.2 g", "two ways"},
    {"1.104.2 g", "two ways"},
    {"ST,1,104.2 g", "two ways"},
    {",5 g", "point or comma"},
    {"ST.5 g", "point or comma"},
    {"104.2- g", "sign"},
    {"+-104.2 g", "sign"},
    {"- ST 104.2 g", "sign"},
    {">104.2 g", "less, more or about"},
    {"1234567890123456 g", "more digits"},
    {"UL,GS,-99.9 g", "below what it can show"},
    {"Err 3 g", "reports a fault"},
    {"10\x01"
     "4.2 g",
     "no text"},
    {"104.2 \xB5N", "no text"},
    {"12 \xB5g\r\n", "no text"},
});

TEST(ScaleLine, RefusesWithTheReason) {
  for (const Refusal& refusal : kRefusals) {
    const auto reading = reading_of_line(refusal.sent);

    ASSERT_FALSE(reading) << refusal.sent;
    EXPECT_THAT(reading.error().sentence, HasSubstr(std::string(refusal.why))) << refusal.sent;
  }
}

TEST(ScaleLine, ARefusalShowsTheLine) {
  EXPECT_EQ(reading_of_line("ST,GS,+  104.2\r\n").error().place.found, "ST,GS,+  104.2");
  EXPECT_EQ(reading_of_line("10\xFF\x01"
                            "4.2 g\r\n")
                .error()
                .place.found,
            "104.2 g");
}

TEST(ScaleLine, ALineThatIsTooLongIsRefused) {
  const std::string sent = std::string(kLongestLine, ' ') + "104.2 g";

  EXPECT_THAT(reading_of_line(sent).error().sentence, HasSubstr("longer"));
}

TEST(ScaleLine, ACommaIsForDecimalsWhereThatIsSaid) {
  const LineRules rules{.comma_is_decimal = true};

  EXPECT_DOUBLE_EQ(reading_of_line("1,104 kg", rules).value().number.value(), 1.104);
  EXPECT_THAT(reading_of_line("1.104 kg", rules).error().sentence, HasSubstr("two ways"));
}

std::string with_parity(std::string_view text, bool is_odd) {
  std::string sent(text);
  for (char& byte : sent) {
    const auto bits = static_cast<unsigned char>(byte);
    if ((std::popcount(bits) % 2 == 1) != is_odd) byte = static_cast<char>(bits | 0x80);
  }
  return sent;
}

TEST(ScaleLine, TakesParityBitsOff) {
  const std::string_view plain = "ST,GS,+  104.2 g\r\n";
  std::string marked(plain);
  for (char& byte : marked) byte = static_cast<char>(static_cast<unsigned char>(byte) | 0x80);

  for (const std::string& sent : {with_parity(plain, false), with_parity(plain, true), marked}) {
    EXPECT_EQ(reading_of_line(sent).value(), reading_of_line(plain).value());
  }
}

TEST(ScaleLine, OneDamagedBitOfALineWithParityIsSeen) {
  const std::string sent = with_parity("ST,GS,+  104.2 g\r\n", false);

  for (std::size_t byte = 0; byte < sent.size(); ++byte) {
    for (int bit = 0; bit < 8; ++bit) {
      std::string damaged = sent;
      damaged[byte] = static_cast<char>(static_cast<unsigned char>(damaged[byte]) ^ (1U << bit));

      EXPECT_FALSE(reading_of_line(damaged)) << byte << ", " << bit;
    }
  }
}

TEST(ScaleLine, WhatTheSystemMarksAsDamagedIsRefused) {
  EXPECT_FALSE(reading_of_line(std::string("10\xFF\x00\x34.2 g\r\n", 11)));
}

bool is_sound(const Reading& reading) {
  if (reading.is_overload) return !reading.number;
  const materials::Unit* unit = materials::find_unit(reading.unit);
  const bool is_load = unit != nullptr && unit->name == reading.unit &&
                       (unit->dimension == materials::Dimension::force ||
                        unit->dimension == materials::Dimension::mass);
  return is_load && reading.number && std::isfinite(*reading.number);
}

bool is_shown(std::string_view text) {
  return std::ranges::all_of(text, [](char c) { return c >= ' ' && c <= '~'; });
}

TEST(ScaleLine, WhateverComesNoNumberIsWithoutItsUnit) {
  EXPECT_TRUE(rc::check("bytes of any sort", [](const std::vector<char>& bytes) {
    const auto reading = reading_of_line({bytes.data(), bytes.size()});
    if (reading) {
      RC_ASSERT(is_sound(*reading));
      RC_ASSERT(is_shown(reading->line));
    } else {
      RC_ASSERT(is_shown(reading.error().place.found));
    }
  }));
  EXPECT_TRUE(rc::check("what lines are made of", [] {
    const auto line = *rc::gen::container<std::string>(
        rc::gen::elementOf(std::string("0123456789.,+-? STUSGNKOLgkNlb\r\n")));
    const auto reading = reading_of_line(line);
    if (reading) RC_ASSERT(is_sound(*reading));
  }));
}

TEST(ScaleLine, ReadsBackWhatItWasGiven) {
  EXPECT_TRUE(rc::check("tenths with blanks anywhere", [] {
    const int tenths = *rc::gen::inRange(-99999, 99999);
    const int blanks = *rc::gen::inRange(0, 9);
    const std::string unit = *rc::gen::element<std::string>("g", "kg", "N", "lb", "gf", "oz");
    const int size = std::abs(tenths);
    const std::string line = std::string(tenths < 0 ? "-" : "+") +
                             std::string(static_cast<std::size_t>(blanks), ' ') +
                             std::to_string(size / 10) + "." + std::to_string(size % 10) +
                             std::string(static_cast<std::size_t>(blanks % 3), ' ') + unit;
    const auto reading = reading_of_line(line);
    RC_ASSERT(reading.has_value());
    RC_ASSERT(std::abs(*reading->number - tenths / 10.0) < 1e-9);
    RC_ASSERT(reading->unit == unit);
  }));
}

}  // namespace
}  // namespace keenfall::scale
