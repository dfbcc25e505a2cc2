// Looks: each judging of a trial in the notebook, kept with what it was asked and what it answered.
//
// Whoever looks again and again while readings come in, and stops when it looks good, finds chance
// differences; so looks are counted. A look cannot be taken back. The same question about the same
// inputs with the same seed and version has one answer, which is stored once.
#pragma once

#include "base/result.h"
#include "base/seed.h"
#include "notebook/notebook.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace keenfall::notebook {

struct JudgedInputs {
  std::string sha256;        // of the trial as it was judged, in hexadecimal
  std::size_t runs = 0;      // that count: not voided
  std::size_t readings = 0;  // of those, not struck out

  bool operator==(const JudgedInputs&) const = default;
};

struct StoredJudgement {
  JudgedInputs inputs;
  std::string question;  // as it was asked, in options; may be empty
  base::Seed seed;
  std::string program_version;
  std::string answer;  // JSON, as docs/wire describes it

  bool operator==(const StoredJudgement&) const = default;
};

struct Look {
  std::string at_utc;
  std::string who;
  StoredJudgement judgement;
};

// Of all looks at a trial: how often, and at how many different states of its readings.
struct LookCount {
  std::size_t looks = 0;
  std::size_t states = 0;
  std::int64_t entry = 0;  // of the look that was counted last; 0 where none was
};

// Of a trial by name, in the order they were made; empty where there is none.
[[nodiscard]] std::vector<Look> looks_at(const Notebook& notebook, const std::string& trial);

// Does the journal's entry say that somebody looked? It cannot be undone.
[[nodiscard]] bool is_look(const JournalEntry& entry);

[[nodiscard]] LookCount count_of(const std::vector<Look>& looks);

// Stores one more look at the trial of that name. Out: all looks at it now. Fails with a Problem
// where there is no such trial.
[[nodiscard]] base::Result<LookCount> count_look(Notebook& notebook,
                                                 const std::string& trial,
                                                 const StoredJudgement& judgement,
                                                 const Authorship& by);

// Whether anything but looks came in after that entry of the journal.
[[nodiscard]] bool has_changed_since(const Notebook& notebook, std::int64_t entry);

}  // namespace keenfall::notebook
