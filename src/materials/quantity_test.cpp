#include "materials/quantity.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::materials {
namespace {

using testing::HasSubstr;

Quantity read(std::string_view text) { return parse_quantity(text).value(); }

TEST(Quantities, AreReadWithOrWithoutABlankBeforeTheUnit) {
  EXPECT_EQ(read("400gf"), (Quantity{400, "gf"}));
  EXPECT_EQ(read("400 gf"), (Quantity{400, "gf"}));
  EXPECT_EQ(read("3.9 N"), (Quantity{3.9, "N"}));
  EXPECT_EQ(read("0.3mm"), (Quantity{0.3, "mm"}));
  EXPECT_EQ(read("\u00a0400\u00a0gf "), (Quantity{400, "gf"}));
}

TEST(Quantities, NameTheUnitAsTheTableDoes) {
  EXPECT_EQ(read("9 microns"), (Quantity{9, "um"}));
  EXPECT_EQ(read("61hrc"), (Quantity{61, "HRC"}));
  EXPECT_EQ(read("17deg-per-side"), (Quantity{17, "deg-per-side"}));
  EXPECT_EQ(read("17° per side"), (Quantity{17, "deg-per-side"}));
}

TEST(Quantities, KeepAUnitNobodyKnowsAsWritten) {
  EXPECT_EQ(read("40 chips"), (Quantity{40, "chips"}));
  EXPECT_EQ(read("12"), (Quantity{12, ""}));
}

TEST(Quantities, TakeADecimalComma) {
  EXPECT_EQ(read("0,3 mm"), (Quantity{0.3, "mm"}));
  EXPECT_EQ(read("0,300 mm"), (Quantity{0.3, "mm"}));
  EXPECT_EQ(read("3,9N"), (Quantity{3.9, "N"}));
}

TEST(Quantities, TakeSignsAndExponents) {
  EXPECT_EQ(read("-2 N"), (Quantity{-2, "N"}));
  EXPECT_EQ(read("+2 N"), (Quantity{2, "N"}));
  EXPECT_EQ(read("1.5e2gf"), (Quantity{150, "gf"}));
  EXPECT_EQ(read(".5mm"), (Quantity{0.5, "mm"}));
}

TEST(Quantities, RefuseACommaThatCouldMarkThousands) {
  const auto unclear = parse_quantity("1,000 gf");

  ASSERT_FALSE(unclear.has_value());
  EXPECT_THAT(unclear.error().sentence, HasSubstr("could be thousands or a decimal comma"));
}

TEST(Quantities, RefuseWhatDoesNotBeginWithANumber) {
  for (const char* text : {"", "gf", "nan gf", "inf", "-", ".", "--2 N", "1.2.3 N", "1e999 N"}) {
    EXPECT_FALSE(parse_quantity(text).has_value()) << text;
  }
  EXPECT_EQ(parse_quantity("gf").error().sentence, "a quantity must begin with a number");
  EXPECT_THAT(parse_quantity("gf").error().accepted, HasSubstr("400gf"));
}

}  // namespace
}  // namespace keenfall::materials
