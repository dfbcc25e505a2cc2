#include "cli/exit_codes.h"

#include <algorithm>

namespace keenfall::cli {

namespace {

ExitCode code_of_one(const base::Problem& problem) {
  switch (problem.kind) {
    case base::ProblemKind::interrupted:
      return ExitCode::stopped;
    case base::ProblemKind::unreadable:
      return ExitCode::file_trouble;
    case base::ProblemKind::bad_value:
    case base::ProblemKind::missing:
    case base::ProblemKind::conflicting:
    case base::ProblemKind::unknown_name:
    case base::ProblemKind::too_large:
    case base::ProblemKind::unsuitable_data:
      break;
  }
  // A problem with an option carries the option's name where a table's carries a column.
  return problem.place.column.starts_with("--") ? ExitCode::wrong_usage : ExitCode::table_refused;
}

}  // namespace

ExitCode exit_code_of(const std::vector<base::Problem>& problems) {
  for (const ExitCode code : {ExitCode::stopped, ExitCode::file_trouble, ExitCode::table_refused}) {
    const bool is_among_them = std::ranges::any_of(
        problems, [code](const base::Problem& problem) { return code_of_one(problem) == code; });
    if (is_among_them) return code;
  }
  return ExitCode::wrong_usage;
}

}  // namespace keenfall::cli
