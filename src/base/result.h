// What can go wrong with what a person gave us, and the type that carries it.
//
// A Problem is one plain sentence with its place (file, line, column, what was found) and what
// would have been accepted. Functions that can fail for such a reason return Result<T>; functions
// that read many cells and report every refused one return ResultOrProblems<T>. Misuse by our own
// code is not a Problem: see require.h. Only names shared with std::expected are used on these
// types.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace keenfall::base {

enum class ProblemKind {
  bad_value,        // a cell, an option's argument: present, but not what it should be
  missing,          // a required column, option or name is not there
  conflicting,      // two statements that cannot both hold (a blade with two steels)
  unknown_name,     // a steel, unit, kind or column nobody has heard of
  unreadable,       // the file cannot be opened or is not text
  too_large,        // more than is taken in
  unsuitable_data,  // well-formed, but nothing can be judged from it
  interrupted       // the person asked to stop
};

// Where the problem stands. Empty fields are not known or do not apply.
struct Place {
  std::string file;
  std::optional<std::size_t> line;  // 1-based, as a text editor counts
  std::string column;               // the header as the file writes it, or an option's name
  std::string found;                // the offending text, as written
  std::string cell;  // in a spreadsheet, said instead of line and column: "cell C7", "row 7"

  bool operator==(const Place&) const = default;
};

struct Problem {
  ProblemKind kind = ProblemKind::bad_value;
  std::string sentence;  // what is wrong: names the quantity, what was found, what is needed
  Place place;
  std::string accepted;  // what would be accepted, as a phrase; may be empty

  bool operator==(const Problem&) const = default;
};

template <class T>
using Result = tl::expected<T, Problem>;

template <class T>
using ResultOrProblems = tl::expected<T, std::vector<Problem>>;

[[nodiscard]] inline tl::unexpected<Problem> failed(Problem problem) {
  return tl::unexpected<Problem>(std::move(problem));
}

// Of a ResultOrProblems, where there is one.
[[nodiscard]] inline tl::unexpected<std::vector<Problem>> failed_by(Problem problem) {
  return tl::unexpected(std::vector<Problem>{std::move(problem)});
}

// One line for a person: "table.csv, line 7, column cuts: <sentence> (found “x”; accepted: y)".
[[nodiscard]] std::string in_words(const Problem& problem);

}  // namespace keenfall::base
