#include "exchange/problem_list.h"

#include "base/require.h"

#include <algorithm>
#include <cctype>
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

void ProblemList::stand_in(TablePart row, std::optional<TablePart> reading) {
  row_ = row;
  reading_ = reading;
  run_ = {};
}

void ProblemList::stand_in(std::span<const TablePart> rows) {
  stand_nowhere();
  run_ = rows;
}

void ProblemList::stand_nowhere() {
  row_.reset();
  reading_.reset();
  run_ = {};
}

void ProblemList::blame(std::span<const TablePart> parts,
                        const std::string& sentence,
                        const std::string& header) {
  if (keeps_blames_) blamed_.add(parts, sentence, header);
}

void ProblemList::blame_for(const base::Problem& problem, Concerns concerns) {
  if (!keeps_blames_ || concerns == Concerns::others) return;
  if (concerns == Concerns::table || (!row_ && run_.empty())) {
    concerns_table_ = true;
  } else if (concerns == Concerns::reading && reading_) {
    blamed_.add({&*reading_, 1}, problem.sentence, problem.place.column);
  } else if (row_) {
    blamed_.add({&*row_, 1}, problem.sentence);
  } else {
    blamed_.add(run_, problem.sentence);
  }
}

void ProblemList::add(Origin at, base::Problem problem, Concerns concerns) {
  base::require(at.file < files_.size(), "a problem stands in a file that was begun");
  blame_for(problem, concerns);
  if (at.column > 0) {
    std::string key = "cell " + std::to_string(at.file) + "," + std::to_string(at.line) + "," +
                      std::to_string(at.column) + problem.sentence;
    if (!told_once_.emplace(std::move(key), entries_.size()).second) return;
  }
  if (++total_ > most_listed_) return;
  fill_place(at, problem);
  entries_.push_back({.at = at, .problem = std::move(problem)});
}

void ProblemList::fill_place(Origin at, base::Problem& problem) const {
  const File& file = files_[at.file];
  problem.place.file = file.name;
  if (at.line > 0) problem.place.line = at.line;
  if (at.line > 0 && file.naming == PlaceNaming::cells) problem.place.cell = line_in_words(at);
  if (at.column > 0 && file.naming == PlaceNaming::lines_and_letters) {
    problem.place.column = column_letters(at.column);
  }
}

void ProblemList::notice(Origin at, const std::string& header, std::string sentence) {
  if (++noticed_count_ > kMostReported) return;
  base::Problem noticed{.sentence = std::move(sentence), .place = {.column = header}};
  fill_place(at, noticed);
  noticed_.push_back({.at = at, .problem = std::move(noticed)});
}

std::vector<std::string> ProblemList::noticed_in_words() const {
  constexpr std::size_t kMostRemarks = 10;
  std::vector<std::string> remarks;
  for (const Entry& entry : noticed_) {
    if (remarks.size() == kMostRemarks) break;
    std::string place = place_in_words(entry.at);
    if (files_.size() < 2) place.front() = static_cast<char>(std::toupper(place.front()));
    remarks.push_back(place + ": " + entry.problem.sentence);
  }
  if (noticed_count_ > remarks.size()) {
    const std::size_t more = noticed_count_ - remarks.size();
    remarks.push_back("And " + std::to_string(more) + " more such " +
                      (more == 1 ? "remark." : "remarks."));
  }
  return remarks;
}

void ProblemList::add_once(const std::string& key,
                           Origin at,
                           base::Problem problem,
                           Concerns concerns) {
  if (told_once_.emplace(key, entries_.size()).second) add(at, std::move(problem), concerns);
}

void ProblemList::add_counted(const std::string& key,
                              Origin at,
                              base::Problem problem,
                              Concerns concerns) {
  if (lists_each_) return add(at, std::move(problem), concerns);
  const auto known = told_once_.find(key);
  if (known == told_once_.end()) {
    told_once_[key] = entries_.size();
    add(at, std::move(problem), concerns);
    return;
  }
  blame_for(problem, concerns);
  if (known->second < entries_.size()) ++entries_[known->second].further_lines;
}

void ProblemList::add_general(base::Problem problem) {
  concerns_table_ = true;
  if (++total_ <= most_listed_) entries_.push_back({.problem = std::move(problem)});
}

std::string ProblemList::place_in_words(Origin at) const {
  const std::string line = line_in_words(at);
  return files_.size() < 2 ? line : files_[at.file].name + ", " + line;
}

std::string ProblemList::file_in_words(std::size_t file) const {
  const std::string& name = files_[file].name;
  return name.substr(name.find_last_of("/\\") + 1);
}

std::vector<base::Problem> ProblemList::sorted() && { return listed(std::move(entries_), total_); }

std::vector<base::Problem> listed(std::vector<ProblemList::Entry> entries, std::size_t total) {
  std::ranges::stable_sort(entries, {}, &ProblemList::Entry::at);
  if (entries.size() > ProblemList::kMostReported) entries.resize(ProblemList::kMostReported);
  std::vector<base::Problem> problems;
  for (ProblemList::Entry& entry : entries) {
    if (entry.further_lines > 0) {
      entry.problem.sentence += " The same on " + std::to_string(entry.further_lines) +
                                (entry.further_lines == 1 ? " further line." : " further lines.");
    }
    problems.push_back(std::move(entry.problem));
  }
  if (total > problems.size()) {
    problems.push_back({.sentence = "And " + std::to_string(total - problems.size()) +
                                    " more problems like these, not listed."});
  }
  return problems;
}

}  // namespace keenfall::exchange
