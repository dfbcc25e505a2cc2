// Every refused cell of one reading-in, in the order of the files and lines, at most 200 of them.
//
// Problems that many rows share (an unknown kind, a unit of the wrong dimension) are told once,
// with the number of further lines. The last entry says how many more there were. Where asked to,
// it also keeps what would have to be left out for each problem to be gone (blamed_parts.h).
#pragma once

#include "base/result.h"
#include "exchange/blamed_parts.h"
#include "exchange/table_part.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

namespace keenfall::exchange {

// Which file (or sheet) of those taken in (0-based), which line of it, which column.
struct Origin {
  std::size_t file = 0;
  std::size_t line = 0;    // 1-based; 0: the file as a whole
  std::size_t column = 0;  // 1-based; 0: not known, or known by its header

  auto operator<=>(const Origin&) const = default;
};

// How a person finds a place in the file.
enum class PlaceNaming {
  lines_and_headers,  // line 7, column cuts
  lines_and_letters,  // line 7, column D: where headers run down the first column
  cells               // cell D7, row 7: in a spreadsheet
};

// 1 is A, 27 is AA, as spreadsheet programs count.
[[nodiscard]] std::string column_letters(std::size_t column);

// What is wrong where a problem is found.
enum class Concerns {
  row,      // the row or column it stands in
  reading,  // only the reading it stands in
  table,    // the table as a whole, though it is seen in one row
  others    // what is blamed for it separately
};

class ProblemList {
 public:
  static constexpr std::size_t kMostReported = 200;

  struct Entry {
    Origin at;
    base::Problem problem;
    std::size_t further_lines = 0;
  };

  // Starts the next file or sheet; problems name it from now on.
  void begin_file(std::string name, PlaceNaming naming = PlaceNaming::lines_and_headers);
  // Of the file begun last, once its shape is known.
  void name_places_by(PlaceNaming naming);
  [[nodiscard]] std::size_t current_file() const { return files_.size() - 1; }

  // Fills the problem's file and place from `at`. The same sentence about one cell is kept once.
  void add(Origin at, base::Problem problem, Concerns concerns = Concerns::row);
  // Once for all rows with this key.
  void add_once(const std::string& key,
                Origin at,
                base::Problem problem,
                Concerns concerns = Concerns::table);
  // Once for all rows with this key, saying on how many further lines it stands.
  void add_counted(const std::string& key,
                   Origin at,
                   base::Problem problem,
                   Concerns concerns = Concerns::row);
  // What is taken all the same: the first 200 are kept.
  void notice(Origin at, const std::string& header, std::string sentence);
  [[nodiscard]] const std::vector<Entry>& noticed() const { return noticed_; }
  // As remarks: the first ten, and how many more there are.
  [[nodiscard]] std::vector<std::string> noticed_in_words() const;
  // For what concerns no file: an option.
  void add_general(base::Problem problem);

  // From now on as many are listed, and what many rows share is listed for each of them.
  void list_each(std::size_t most) {
    most_listed_ = most;
    lists_each_ = true;
  }

  // From now on what stands in rows is blamed on them.
  void keep_blames() { keeps_blames_ = true; }
  [[nodiscard]] bool keeps_blames() const { return keeps_blames_; }
  // What problems are blamed on from now on, until the next call: a row and its reading, the rows
  // of a run (which must outlive it), or nothing but the table.
  void stand_in(TablePart row, std::optional<TablePart> reading = std::nullopt);
  void stand_in(std::span<const TablePart> rows);
  void stand_nowhere();
  [[nodiscard]] TablePart current_row() const { return row_.value_or(TablePart{}); }
  void blame(std::span<const TablePart> parts,
             const std::string& sentence,
             const std::string& header = "");
  [[nodiscard]] const BlamedParts& blamed() const { return blamed_; }
  // Whether a problem is blamed on nothing less than a whole table.
  [[nodiscard]] bool concerns_table() const { return concerns_table_; }

  [[nodiscard]] bool empty() const { return total_ == 0; }
  [[nodiscard]] std::size_t total() const { return total_; }
  [[nodiscard]] const std::vector<Entry>& entries() const { return entries_; }
  // "t.csv, sheet 2", without folders.
  [[nodiscard]] std::string file_in_words(std::size_t file) const;
  [[nodiscard]] PlaceNaming naming_of(std::size_t file) const { return files_[file].naming; }
  // "a.csv, line 3", "sheet 2, cell C3"; "line 3" where there is only one file.
  [[nodiscard]] std::string place_in_words(Origin at) const;
  [[nodiscard]] std::vector<base::Problem> sorted() &&;

 private:
  struct File {
    std::string name;
    PlaceNaming naming = PlaceNaming::lines_and_headers;
  };

  [[nodiscard]] std::string line_in_words(Origin at) const;
  void blame_for(const base::Problem& problem, Concerns concerns);
  void fill_place(Origin at, base::Problem& problem) const;

  std::vector<File> files_;
  std::vector<Entry> entries_;
  std::unordered_map<std::string, std::size_t> told_once_;  // key to entry
  std::vector<Entry> noticed_;
  std::size_t noticed_count_ = 0;
  std::size_t total_ = 0;
  std::size_t most_listed_ = kMostReported;
  bool lists_each_ = false;
  bool keeps_blames_ = false;
  bool concerns_table_ = false;
  std::optional<TablePart> row_;
  std::optional<TablePart> reading_;
  std::span<const TablePart> run_;  // where no row is stood in
  BlamedParts blamed_;
};

// As a person reads them: in order, with how many more there were than are listed.
[[nodiscard]] std::vector<base::Problem> listed(std::vector<ProblemList::Entry> entries,
                                                std::size_t total);

}  // namespace keenfall::exchange
