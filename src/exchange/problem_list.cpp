#include "exchange/problem_list.h"

#include "base/require.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

std::string column_letters(std::size_t column) {
  constexpr std::size_t kLetters = 26;
  std::string letters;
  for (; column > 0; column = (column - 1) / kLetters) {
    letters.insert(letters.begin(), static_cast<char>('A' + (column - 1) % kLetters));
  }
  return letters;
}

void ProblemList::begin_file(std::string name, PlaceNaming naming) {
  files_.push_back({.name = std::move(name), .naming = naming});
}

void ProblemList::name_places_by(PlaceNaming naming) { files_.back().naming = naming; }

std::string ProblemList::line_in_words(Origin at) const {
  const std::string line = std::to_string(at.line);
  switch (files_[at.file].naming) {
    case PlaceNaming::cells:
      return at.column > 0 ? "cell " + column_letters(at.column) + line : "row " + line;
    case PlaceNaming::lines_and_letters:
      return "line " + line + (at.column > 0 ? ", column " + column_letters(at.column) : "");
    case PlaceNaming::lines_and_headers:
      break;
  }
  return "line " + line;
}

void ProblemList::add(Origin at, base::Problem problem) {
  base::require(at.file < files_.size(), "a problem stands in a file that was begun");
  if (at.column > 0) {
    std::string key = "cell " + std::to_string(at.file) + "," + std::to_string(at.line) + "," +
                      std::to_string(at.column) + problem.sentence;
    if (!told_once_.emplace(std::move(key), entries_.size()).second) return;
  }
  if (++total_ > kMostReported) return;
  const File& file = files_[at.file];
  problem.place.file = file.name;
  if (at.line > 0) problem.place.line = at.line;
  if (at.line > 0 && file.naming == PlaceNaming::cells) problem.place.cell = line_in_words(at);
  if (at.column > 0 && file.naming == PlaceNaming::lines_and_letters) {
    problem.place.column = column_letters(at.column);
  }
  entries_.push_back({.at = at, .problem = std::move(problem)});
}

void ProblemList::add_once(const std::string& key, Origin at, base::Problem problem) {
  if (told_once_.emplace(key, entries_.size()).second) add(at, std::move(problem));
}

void ProblemList::add_counted(const std::string& key, Origin at, base::Problem problem) {
  const auto known = told_once_.find(key);
  if (known == told_once_.end()) {
    told_once_[key] = entries_.size();
    add(at, std::move(problem));
  } else if (known->second < entries_.size()) {
    ++entries_[known->second].further_lines;
  }
}

void ProblemList::add_general(base::Problem problem) {
  if (++total_ <= kMostReported) entries_.push_back({.problem = std::move(problem)});
}

std::string ProblemList::place_in_words(Origin at) const {
  const std::string line = line_in_words(at);
  return files_.size() < 2 ? line : files_[at.file].name + ", " + line;
}

std::vector<base::Problem> ProblemList::sorted() && {
  std::ranges::stable_sort(entries_, {}, &Entry::at);
  std::vector<base::Problem> problems;
  for (Entry& entry : entries_) {
    if (entry.further_lines > 0) {
      entry.problem.sentence += " The same on " + std::to_string(entry.further_lines) +
                                (entry.further_lines == 1 ? " further line." : " further lines.");
    }
    problems.push_back(std::move(entry.problem));
  }
  if (total_ > kMostReported) {
    problems.push_back({.sentence = "And " + std::to_string(total_ - kMostReported) +
                                    " more problems like these, not listed."});
  }
  return problems;
}

}  // namespace keenfall::exchange
