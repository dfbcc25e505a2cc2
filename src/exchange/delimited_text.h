// Delimited text (RFC 4180 and what people make of it) read record by record, each cell with its
// line.
//
// In: UTF-8 text; the delimiter is a comma, a semicolon or a tab. Lines end with CR LF, LF or CR.
// A cell may be quoted, with "" for a quote and with line ends inside. Rows without any content and
// rows that start with # are passed over. Cells come without the blanks around them. Where another
// program states how it wrote a table (DelimitedStyle), it is read to the letter instead. A record
// with a broken quote carries a fault instead of stopping the reading. Why it is our own:
// docs/decisions/0002-own-delimited-reader.md.
#pragma once

#include <cstddef>
#include <deque>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

struct Cell {
  std::string_view text;
  std::size_t line = 0;      // where the cell begins, 1-based
  std::size_t column = 0;    // 1-based, where a person knows it by its letter; 0: by its header
  std::string_view fault{};  // why it cannot be used, as a sentence: "The cell holds an error ..."
};

struct QuoteFault {
  std::string sentence;
  Cell cell;                   // what was found, and where
  bool is_to_the_end = false;  // it swallows the rest of the table
};

// Views stay valid until the next record is read.
struct Record {
  std::size_t line = 0;
  std::span<const Cell> cells;
  std::optional<QuoteFault> fault;
  std::size_t column = 0;  // where the row is known by one of its cells; 0: it is not
};

// ',', ';' or '\t': the one the first written line (the header) has most of; the delimiter named by
// a first line "sep=;". nullopt when it has none of them.
[[nodiscard]] std::optional<char> recognise_delimiter(std::string_view text);

// All that the first lines have any of, the likeliest first; the one named by "sep=" alone.
[[nodiscard]] std::vector<char> likely_delimiters(std::string_view text);

// The first line that cannot but have more cells, by any delimiter; nothing where there is none.
[[nodiscard]] std::optional<std::size_t> first_line_wider_than(std::size_t most_cells,
                                                               std::string_view text);

struct DelimitedStyle {
  char delimiter = ',';
  char quote = '"';    // '\0': no cell is quoted
  char comment = '#';  // with which a row begins that is passed over; '\0': none does
  // Blanks around cells, rows of empty cells and a first line "sep=;" are content; only lines
  // without a byte are passed over.
  bool to_the_letter = false;
  bool skips_blanks_before_cells = false;  // all the same
};

class DelimitedReader {
 public:
  DelimitedReader(std::string_view text, char delimiter);
  DelimitedReader(std::string_view text, const DelimitedStyle& style);

  // The next row with content; nullopt at the end.
  [[nodiscard]] std::optional<Record> next();

  [[nodiscard]] std::size_t comment_count() const { return comment_count_; }
  // Of the first row passed over as a comment; 0 when there was none.
  [[nodiscard]] std::size_t first_comment_line() const { return first_comment_line_; }

 private:
  Record read_record();
  void read_cell(std::optional<QuoteFault>& fault);
  void read_quoted_cell(std::optional<QuoteFault>& fault);
  bool pass_over_comment();
  [[nodiscard]] bool at_cell_end() const;
  [[nodiscard]] std::string_view content(std::size_t start) const;
  void skip_blanks();
  void skip_to_line_end();
  void end_line();

  std::string_view text_;
  DelimitedStyle style_;
  std::size_t at_ = 0;
  std::size_t line_ = 1;
  std::vector<Cell> cells_;
  std::deque<std::string> unescaped_;  // cells of this record that held ""
  std::size_t comment_count_ = 0;
  std::size_t first_comment_line_ = 0;
};

}  // namespace keenfall::exchange
