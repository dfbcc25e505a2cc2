#include "page/figure.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <utility>

namespace keenfall::page {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

// Blades K1 to K`blades`, with one row of so many numbers.
std::string table_of(int blades) {
  telling::Table table{.caption = "curves", .columns = {{.head = "cuts"}}};
  telling::Row row{.cells = {"7"}};
  for (int i = 1; i <= blades; ++i) {
    table.columns.push_back({.head = "K" + std::to_string(i)});
    row.cells.push_back(std::to_string(100 + i));
  }
  table.rows = {row};
  Html html;
  add_table(html, table);
  return std::move(html).taken();
}

std::size_t times_in(const std::string& page, const std::string& words) {
  std::size_t count = 0;
  for (auto at = page.find(words); at != std::string::npos; at = page.find(words, at + 1)) ++count;
  return count;
}

TEST(ATable, ThatASheetOfPaperHoldsIsOne) {
  const std::string table = table_of(7);

  EXPECT_EQ(times_in(table, "<table>"), 1U);
  EXPECT_THAT(table, HasSubstr("<caption>curves</caption>"));
}

TEST(ATable, ThatIsWiderComesInPiecesThatSayWhatTheyAreOf) {
  const std::string table = table_of(13);

  EXPECT_EQ(times_in(table, "<table>"), 3U);
  EXPECT_EQ(times_in(table, ">7</th>"), 3U);
  for (int i = 1; i <= 13; ++i) EXPECT_EQ(times_in(table, ">" + std::to_string(100 + i) + "<"), 1U);
  EXPECT_THAT(table,
              AllOf(HasSubstr("<caption>curves (K1 to K6)</caption>"),
                    HasSubstr("<caption>curves (K13)</caption>"),
                    Not(HasSubstr("K13 to K13"))));
}

}  // namespace
}  // namespace keenfall::page
