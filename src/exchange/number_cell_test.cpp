#include "exchange/number_cell.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using enum DecimalMark;

DecimalMark decision_for(std::initializer_list<const char*> texts) {
  DecimalTally tally;
  for (const char* text : texts) tally.add(text, 1, "reading");
  return tally.decision();
}

TEST(NumberCells, AreReadWithTheTablesMark) {
  EXPECT_EQ(number_cell("17.5", point).number, 17.5);
  EXPECT_EQ(number_cell("17,5", comma).number, 17.5);
  EXPECT_EQ(number_cell("104", comma).number, 104);
  EXPECT_EQ(number_cell("+2", point).number, 2);
  EXPECT_EQ(number_cell("-2", point).number, -2);
  EXPECT_EQ(number_cell("\xE2\x88\x92"
                        "2",
                        point)
                .number,
            -2);
  EXPECT_EQ(number_cell("1e3", point).number, 1000);
  EXPECT_EQ(number_cell("1,5E-3", comma).number, 0.0015);
  EXPECT_EQ(number_cell(".5", point).number, 0.5);
}

TEST(NumberCells, KeepTheUnitGluedToThem) {
  const NumberCell cell = number_cell("104 gf", point);

  EXPECT_EQ(cell.number, 104);
  EXPECT_EQ(cell.unit, "gf");
  EXPECT_EQ(number_cell("0.38mm", point).unit, "mm");
  EXPECT_EQ(number_cell("17°", point).unit, "°");
}

TEST(NumberCells, RefuseThousandsSeparators) {
  for (const char* text : {"1,234.5", "1.234,5", "1'234", "1 234", "1\u00A0234", "1,234,567.5"}) {
    EXPECT_EQ(number_cell(text, point).fault, NumberFault::thousands) << text;
  }
  EXPECT_EQ(fault_in_words(NumberFault::thousands, "1'234", point),
            "“1'234” seems to have a thousands separator; write the digits together");
}

TEST(NumberCells, RefuseTheOtherMark) {
  EXPECT_EQ(number_cell("1,5", point).fault, NumberFault::other_mark);
  EXPECT_EQ(number_cell("1.5", comma).fault, NumberFault::other_mark);
}

TEST(NumberCells, RefuseWhatIsNotOneFiniteNumber) {
  for (const char* text :
       {"ten", "-", "1.2.3", "12.03.2024", "<50", "~100", ".", "0x", "e5", "--5"}) {
    const NumberCell cell = number_cell(text, point);
    EXPECT_TRUE(cell.fault != NumberFault::none || !cell.unit.empty()) << text;
  }
  EXPECT_EQ(number_cell("ten", point).fault, NumberFault::not_a_number);
  EXPECT_EQ(number_cell("nan", point).fault, NumberFault::not_finite);
  EXPECT_EQ(number_cell("-inf", point).fault, NumberFault::not_finite);
  EXPECT_EQ(number_cell("1e999", point).fault, NumberFault::out_of_range);
  EXPECT_EQ(number_cell(std::string(500, '1'), point).fault, NumberFault::not_a_number);
}

TEST(NumberCells, AreNeverReadWithAnUndecidedMark) {
  EXPECT_THROW((void)number_cell("1", decide), std::logic_error);
}

TEST(DecimalTallies, FollowTheNumbersThatCanOnlyBeReadOneWay) {
  EXPECT_EQ(decision_for({"17,5", "1,234"}), comma);
  EXPECT_EQ(decision_for({"17.5", "1.234"}), point);
  EXPECT_EQ(decision_for({"0,125"}), comma);
  EXPECT_EQ(decision_for({"1234,567"}), comma);
  EXPECT_EQ(decision_for({"104", "12"}), point);
  EXPECT_EQ(decision_for({"17,5", "3,5", "2.5"}), comma);
  EXPECT_EQ(decision_for({"17.5", "3.5", "2,5"}), point);
}

TEST(DecimalTallies, AreUndecidedWhenEveryCommaMayStandForThousands) {
  EXPECT_EQ(decision_for({"1,234", "12"}), decide);
  EXPECT_EQ(decision_for({"1,234", "1.234"}), decide);
}

}  // namespace
}  // namespace keenfall::exchange
