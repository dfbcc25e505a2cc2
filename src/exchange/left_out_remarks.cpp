#include "exchange/left_out_remarks.h"

#include "exchange/text_lines.h"

#include <cstddef>
#include <map>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kMostRemarks = ProblemList::kMostReported;
constexpr std::size_t kMostPlaces = 50;  // in one remark

// Places of one kind that can be counted through: rows of a file, cells of one column.
struct Stretch {
  std::size_t first = 0;
  std::size_t last = 0;
};

// "line 6", "lines 4 to 9 and 12".
std::string rows_in_words(const std::vector<std::size_t>& lines, const std::string& one) {
  std::vector<Stretch> stretches;
  for (const std::size_t line : lines) {
    if (!stretches.empty() && stretches.back().last + 1 == line) {
      stretches.back().last = line;
    } else {
      stretches.push_back({.first = line, .last = line});
    }
  }
  std::vector<std::string> places;
  std::size_t unnamed = 0;
  for (const Stretch& stretch : stretches) {
    if (places.size() >= kMostPlaces) {
      unnamed += stretch.last - stretch.first + 1;
      continue;
    }
    std::string place = std::to_string(stretch.first);
    if (stretch.last > stretch.first) place += " to " + std::to_string(stretch.last);
    places.push_back(std::move(place));
  }
  if (unnamed > 0) places.push_back(std::to_string(unnamed) + " more");
  std::string words = one + (lines.size() > 1 ? "s " : " ");
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i > 0) words += i + 1 == places.size() ? " and " : ", ";
    words += places[i];
  }
  return words;
}

std::string cell_in_words(const TablePart& cell, const std::string& header, PlaceNaming naming) {
  const std::string line = std::to_string(cell.line);
  if (naming == PlaceNaming::cells) return "cell " + column_letters(cell.column) + line;
  const bool is_by_header = naming == PlaceNaming::lines_and_headers && !header.empty();
  return "line " + line + ", column " +
         (is_by_header ? excerpt(header) : column_letters(cell.column));
}

// Parts of one file with one reason.
struct Together {
  std::vector<std::size_t> rows;
  std::vector<std::string> others;
  std::size_t unnamed = 0;

  void add(const TablePart& part, const std::string& header, PlaceNaming naming) {
    if (part.column == 0) {
      rows.push_back(part.line);
    } else if (others.size() >= kMostPlaces) {
      ++unnamed;
    } else {
      others.push_back(part.line == 0 ? "column " + column_letters(part.column)
                                      : cell_in_words(part, header, naming));
    }
  }

  [[nodiscard]] std::string in_words(PlaceNaming naming) const {
    std::string words;
    if (!rows.empty()) {
      words = rows_in_words(rows, naming == PlaceNaming::cells ? "row" : "line");
    }
    for (const std::string& other : others) words += (words.empty() ? "" : "; ") + other;
    if (unnamed > 0) words += "; " + std::to_string(unnamed) + " more";
    return words;
  }
};

}  // namespace

bool is_within_another(const TablePart& part, const TableParts& parts) {
  if (part.line == 0 || part.column == 0) return false;
  return parts.has({part.file, part.line, 0}) || parts.has({part.file, 0, part.column});
}

std::vector<std::string> remarks_on_left_out(const BlamedParts& blamed, const ProblemList& files) {
  TableParts parts;
  for (const auto& [part, blame] : blamed.parts()) (void)parts.add(part);
  std::vector<std::pair<std::size_t, std::size_t>> order;  // file and reason, as they are met
  std::map<std::pair<std::size_t, std::size_t>, Together> together;
  std::map<std::size_t, std::string> sentences;
  std::size_t unnamed = 0;
  for (const auto& [part, blame] : blamed.parts()) {
    if (is_within_another(part, parts)) continue;
    const std::pair key{part.file, blame.reason};
    const std::string sentence = blamed.sentence_of(blame);
    const bool is_new = !together.contains(key);
    if (is_new && (sentence.empty() || order.size() >= kMostRemarks)) {
      ++unnamed;
      continue;
    }
    if (is_new) order.push_back(key);
    sentences[blame.reason] = sentence;
    together[key].add(part, blame.header, files.naming_of(part.file));
  }
  std::vector<std::string> remarks;
  for (const auto& key : order) {
    remarks.push_back("Left out when " + files.file_in_words(key.first) +
                      " was taken: " + together[key].in_words(files.naming_of(key.first)) + ": " +
                      sentences[key.second]);
  }
  if (unnamed > 0) {
    remarks.push_back("Left out besides, and not named here: " + std::to_string(unnamed) +
                      (unnamed == 1 ? " more place." : " more places."));
  }
  return remarks;
}

}  // namespace keenfall::exchange
