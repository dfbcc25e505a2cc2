// Trials in a notebook: taking one in, adding to it, and having it back as it was.
#pragma once

#include "base/result.h"
#include "notebook/notebook.h"
#include "trials/trial.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

struct TakenTable {
  std::string file_name;    // without its folders
  std::string sha256;       // of its bytes, in hexadecimal
  bool is_in_part = false;  // of these tables something was left out
};

struct Taken {
  std::optional<JournalEntry> entry;  // absent: all of it was there already
  std::size_t runs_added = 0;
  std::size_t runs_grown = 0;  // that were there and have more readings now
  std::size_t runs_known = 0;  // that were there as they are
  std::size_t readings_added = 0;
  std::vector<std::string> remarks;  // which runs were known again although written otherwise
};

// Puts a trial's tables into the notebook's trial of that name (made where there is none). A run is
// known again by its arm and name: one that is there as it is stays, one that only has more
// readings (also in between) or strikes grows, one that contradicts what is there is a problem, as
// is a blade with another steel. With a problem nothing is taken. Tables that were all taken before
// change nothing.
[[nodiscard]] base::ResultOrProblems<Taken> take(Notebook& notebook,
                                                 trials::Trial trial,
                                                 const std::vector<TakenTable>& tables,
                                                 const Authorship& by);

// What take() would do, or why it would not: tried on a copy, nothing is changed.
[[nodiscard]] base::ResultOrProblems<Taken> would_take(const Notebook& notebook,
                                                       trials::Trial trial,
                                                       const std::vector<TakenTable>& tables);

struct KeptTrial {
  std::string uid;  // 32 hexadecimal digits: the same trial in every copy of the notebook
  std::string name;
  std::size_t runs = 0;
  std::size_t readings = 0;
};

[[nodiscard]] std::vector<KeptTrial> kept_trials(const Notebook& notebook);
// Of the same, in the same order; at once, however much they hold.
[[nodiscard]] std::vector<std::string> trial_names(const Notebook& notebook);

// By the other; nothing where there is no such trial.
[[nodiscard]] std::optional<std::string> trial_name_of(const Notebook& notebook,
                                                       const std::string& uid);
[[nodiscard]] std::optional<std::string> trial_uid_of(const Notebook& notebook,
                                                      const std::string& name);

// Throws NotebookDamaged where a row that belongs to it is not as it was written.
[[nodiscard]] base::Result<trials::Trial> kept_trial(const Notebook& notebook,
                                                     const std::string& name);

}  // namespace keenfall::notebook
