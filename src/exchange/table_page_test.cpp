// docs/table.md is what people go by: it must name every column and kind, and its table must be
// taken.
#include "exchange/table_columns.h"
#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>

namespace keenfall::exchange {
namespace {

std::string table_page() {
  std::ifstream file(KEENFALL_SOURCE_DIR "/docs/table.md");
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

TEST(TablePage, NamesEveryColumn) {
  const std::string page = table_page();

  for (const ColumnDefinition& definition : column_definitions()) {
    EXPECT_THAT(page, testing::HasSubstr("`" + std::string(definition.name) + "`"));
  }
}

TEST(TablePage, NamesEveryKindWithItsUnit) {
  const std::string page = table_page();

  for (const trials::ReadingKind& kind : trials::known_reading_kinds()) {
    const std::size_t row = page.find("| `" + kind.name + "` |");
    ASSERT_NE(row, std::string::npos) << kind.name;
    const std::string line = page.substr(row, page.find('\n', row) - row);
    const std::string unit = kind.unit == "um" ? "µm" : kind.unit;
    EXPECT_THAT(line, testing::HasSubstr("| " + unit + " |"));
    EXPECT_THAT(
        line,
        testing::EndsWith(kind.keener_when == trials::KeenerWhen::lower ? "lower |" : "higher |"));
  }
}

TEST(TablePage, ShowsATableThatIsTaken) {
  const std::string page = table_page();
  const std::size_t begin = page.find("blade,medium,run,");
  ASSERT_NE(begin, std::string::npos);

  const trials::Trial trial = taken(page.substr(begin, page.find("```", begin) - begin));

  EXPECT_EQ(trial.runs.size(), 2U);
  EXPECT_EQ(trial.runs[0].readings.at(3).struck_reason, "thread slipped");
}

TEST(TablePage, ShowsKindDefinitionsThatAreUnderstood) {
  const std::string page = table_page();
  std::size_t count = 0;
  const std::string option = "--define-kind ";

  for (std::size_t at = page.find(option); at != page.npos; at = page.find(option, at + 1)) {
    const std::size_t begin = at + option.size();
    EXPECT_TRUE(parse_kind_definition(page.substr(begin, page.find('\n', begin) - begin)));
    ++count;
  }

  EXPECT_GE(count, 2U);
}

}  // namespace
}  // namespace keenfall::exchange
