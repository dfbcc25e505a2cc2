#include "exchange/problem_list.h"

#include "base/require.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

void ProblemList::begin_file(std::string name) { file_names_.push_back(std::move(name)); }

void ProblemList::add(Origin at, base::Problem problem) {
  base::require(at.file < file_names_.size(), "a problem stands in a file that was begun");
  if (++total_ > kMostReported) return;
  problem.place.file = file_names_[at.file];
  if (at.line > 0) problem.place.line = at.line;
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
  const std::string line = "line " + std::to_string(at.line);
  return file_names_.size() < 2 ? line : file_names_[at.file] + ", " + line;
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
