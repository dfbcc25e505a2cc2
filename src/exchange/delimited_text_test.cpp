#include "exchange/delimited_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using testing::ElementsAre;

using Rows = std::vector<std::vector<std::string>>;

Rows rows_read_by(DelimitedReader& reader) {
  Rows rows;
  while (const auto record = reader.next()) {
    std::vector<std::string> row;
    for (const Cell& cell : record->cells) row.push_back(std::string(cell.text));
    if (record->fault) row.push_back("fault");
    rows.push_back(row);
  }
  return rows;
}

Rows rows_of(std::string_view text, char delimiter = ',') {
  DelimitedReader reader(text, delimiter);
  return rows_read_by(reader);
}

std::vector<std::size_t> lines_of(std::string_view text) {
  DelimitedReader reader(text, ',');
  std::vector<std::size_t> lines;
  while (const auto record = reader.next()) lines.push_back(record->line);
  return lines;
}

// The examples of RFC 4180, section 2, rules 1 to 7.
TEST(DelimitedText, ReadsTheExamplesOfRfc4180) {
  const Rows expected = {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
  EXPECT_EQ(rows_of("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), expected);
  EXPECT_EQ(rows_of("aaa,bbb,ccc\r\nzzz,yyy,xxx"), expected);
  EXPECT_EQ(rows_of("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"), expected);
  EXPECT_EQ(rows_of("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows_of("\"aaa\",\"b\"\"bb\",\"ccc\""), (Rows{{"aaa", "b\"bb", "ccc"}}));
}

TEST(DelimitedText, EndsLinesWithCrLfCrOrLf) {
  const Rows expected = {{"a", "b"}, {"c", "d"}};

  EXPECT_EQ(rows_of("a,b\nc,d\n"), expected);
  EXPECT_EQ(rows_of("a,b\rc,d\r"), expected);
  EXPECT_EQ(rows_of("a,b\r\nc,d\r\n"), expected);
}

TEST(DelimitedText, CountsLinesAsAnEditorDoesAlsoInsideQuotes) {
  EXPECT_THAT(lines_of("a,b\n\"x\ny\",c\nd,e"), ElementsAre(1, 2, 4));
  EXPECT_THAT(lines_of("a,b\r\n\"x\r\ny\",c\r\nd,e"), ElementsAre(1, 2, 4));
  EXPECT_THAT(lines_of("a,b\r\"x\ry\",c\rd,e"), ElementsAre(1, 2, 4));
}

TEST(DelimitedText, GivesEachCellTheLineItBeginsIn) {
  DelimitedReader reader("\"x\ny\",c", ',');

  const auto record = reader.next();

  ASSERT_TRUE(record);
  EXPECT_EQ(record->cells[0].line, 1U);
  EXPECT_EQ(record->cells[1].line, 2U);
}

TEST(DelimitedText, PassesOverBlankRowsAndRowsOfEmptyCells) {
  EXPECT_EQ(rows_of("\n\na,b\n,,\n  \n\nc,d\n\n\n"), (Rows{{"a", "b"}, {"c", "d"}}));
  EXPECT_THAT(lines_of("\n\na,b\n,,\nc,d\n"), ElementsAre(3, 5));
}

TEST(DelimitedText, PassesOverCommentsAndCountsThem) {
  DelimitedReader reader("a,b\n# a \"note\nc,d\n#x\n", ',');
  std::size_t count = 0;
  while (reader.next()) ++count;

  EXPECT_EQ(count, 2U);
  EXPECT_EQ(reader.comment_count(), 2U);
  EXPECT_EQ(reader.first_comment_line(), 2U);
}

TEST(DelimitedText, TakesAQuotedNumberSignForACell) {
  EXPECT_EQ(rows_of("\"#1\",b\n"), (Rows{{"#1", "b"}}));
}

TEST(DelimitedText, TakesBlanksOffTheEndsOfCells) {
  EXPECT_EQ(rows_of(" a ,\tb,\" c \",\xC2\xA0"
                    "d\xC2\xA0\n"),
            (Rows{{"a", "b", "c", "d"}}));
}

TEST(DelimitedText, KeepsAQuoteInsideAnUnquotedCell) {
  EXPECT_EQ(rows_of("9\" blade,b\n"), (Rows{{"9\" blade", "b"}}));
}

TEST(DelimitedText, FaultsAQuoteThatIsNeverClosedAtTheLineItOpens) {
  DelimitedReader reader("a,b\nc,\"d\ne,f\n", ',');
  (void)reader.next();

  const auto record = reader.next();

  ASSERT_TRUE(record && record->fault);
  EXPECT_EQ(record->fault->cell.line, 2U);
  EXPECT_FALSE(reader.next());
}

TEST(DelimitedText, FaultsTextAfterAClosingQuoteAndGoesOnWithTheNextLine) {
  EXPECT_EQ(rows_of("\"a\"b,c\nd,e\n"), (Rows{{"fault"}, {"d", "e"}}));
}

TEST(DelimitedText, HasNoRowsWhenEmpty) { EXPECT_EQ(rows_of(""), Rows{}); }

TEST(DelimitedText, KeepsTheEmptyLastCell) {
  EXPECT_EQ(rows_of("a,b,\n"), (Rows{{"a", "b", ""}}));
  EXPECT_EQ(rows_of("a,b,"), (Rows{{"a", "b", ""}}));
}

TEST(DelimitedText, CanBeReadToTheLetter) {
  DelimitedReader reader("sep=;\n a , # b\n\n,\n'x,''y' ",
                         DelimitedStyle{.quote = '\'', .comment = '\0', .to_the_letter = true});

  EXPECT_THAT(rows_read_by(reader),
              ElementsAre(ElementsAre("sep=;"),
                          ElementsAre(" a ", " # b"),
                          ElementsAre("", ""),
                          ElementsAre("fault")));
}

TEST(DelimitedText, ToTheLetterMayHaveBlanksBeforeCellsThatMeanNothing) {
  DelimitedReader reader(" a , \"b \",c",
                         DelimitedStyle{.to_the_letter = true, .skips_blanks_before_cells = true});

  EXPECT_THAT(rows_read_by(reader), ElementsAre(ElementsAre("a ", "b ", "c")));
}

TEST(DelimitedText, MayHaveAnotherCommentSignAndOtherQuotes) {
  DelimitedReader reader("% a,b\n|c,||d|,#e\n", DelimitedStyle{.quote = '|', .comment = '%'});

  EXPECT_THAT(rows_read_by(reader), ElementsAre(ElementsAre("c,|d", "#e")));
}

TEST(Delimiters, AreRecognisedFromTheHeader) {
  EXPECT_EQ(recognise_delimiter("blade,medium,run\nA;B;C;D\n"), ',');
  EXPECT_EQ(recognise_delimiter("blade;medium;run\nA;B;1,5\n"), ';');
  EXPECT_EQ(recognise_delimiter("blade\tmedium\trun\n"), '\t');
  EXPECT_EQ(recognise_delimiter("# a, b, c\n\nblade;medium\n"), ';');
  EXPECT_EQ(recognise_delimiter("\"a,b,c\";d\n"), ';');
  EXPECT_EQ(recognise_delimiter("blade\nA\n"), std::nullopt);
  EXPECT_EQ(recognise_delimiter(""), std::nullopt);
}

// Spreadsheet programs write this line for one another; common practice, no source.
TEST(Delimiters, MayBeNamedByAFirstLine) {
  EXPECT_EQ(recognise_delimiter("sep=;\na,b;c,d\n"), ';');
  EXPECT_EQ(rows_of("sep=;\na;b\n", ';'), (Rows{{"a", "b"}}));
}

}  // namespace
}  // namespace keenfall::exchange
