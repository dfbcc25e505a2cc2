// Every refused cell of one reading-in, in the order of the files and lines, at most 200 of them.
//
// Problems that many rows share (an unknown kind, a unit of the wrong dimension) are told once,
// with the number of further lines. The last entry says how many more there were.
#pragma once

#include "base/result.h"

#include <cstddef>
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

class ProblemList {
 public:
  static constexpr std::size_t kMostReported = 200;

  // Starts the next file or sheet; problems name it from now on.
  void begin_file(std::string name, PlaceNaming naming = PlaceNaming::lines_and_headers);
  // Of the file begun last, once its shape is known.
  void name_places_by(PlaceNaming naming);
  [[nodiscard]] std::size_t current_file() const { return files_.size() - 1; }

  // Fills the problem's file and place from `at`. The same sentence about one cell is kept once.
  void add(Origin at, base::Problem problem);
  // Once for all rows with this key.
  void add_once(const std::string& key, Origin at, base::Problem problem);
  // Once for all rows with this key, saying on how many further lines it stands.
  void add_counted(const std::string& key, Origin at, base::Problem problem);
  // For what concerns no file: an option.
  void add_general(base::Problem problem);

  [[nodiscard]] bool empty() const { return total_ == 0; }
  // "a.csv, line 3", "sheet 2, cell C3"; "line 3" where there is only one file.
  [[nodiscard]] std::string place_in_words(Origin at) const;
  [[nodiscard]] std::vector<base::Problem> sorted() &&;

 private:
  struct Entry {
    Origin at;
    base::Problem problem;
    std::size_t further_lines = 0;
  };

  struct File {
    std::string name;
    PlaceNaming naming = PlaceNaming::lines_and_headers;
  };

  [[nodiscard]] std::string line_in_words(Origin at) const;

  std::vector<File> files_;
  std::vector<Entry> entries_;
  std::unordered_map<std::string, std::size_t> told_once_;  // key to entry
  std::size_t total_ = 0;
};

}  // namespace keenfall::exchange
