#include "cli/outcome.h"

#include <fmt/format.h>

#include <utility>

namespace keenfall::cli {

namespace {

// An option stands in its sentence; it is no column of a table.
std::string problem_words(base::Problem problem) {
  const std::string option = problem.place.column;
  if (!option.starts_with("--")) return in_words(problem);
  problem.place.column.clear();
  const bool is_named = option == "--" || problem.sentence.find(option) != std::string::npos;
  return (is_named ? "" : option + ": ") + in_words(problem);
}

std::string one_a_line(const std::vector<base::Problem>& problems) {
  std::string lines;
  for (const base::Problem& problem : problems) lines += problem_words(problem) + "\n";
  return lines;
}

std::string how_many(const std::vector<base::Problem>& problems) {
  return problems.size() == 1 ? std::string("1 problem")
                              : fmt::format("{} problems", problems.size());
}

}  // namespace

Outcome refused(const std::vector<base::Problem>& problems, const std::string& what_was_not_done) {
  const ExitCode code = exit_code_of(problems);
  if (code == ExitCode::stopped)
    return {.code = code, .out = "", .err = "Stopped; nothing was written.\n"};
  return {.code = code,
          .out = "",
          .err = one_a_line(problems) + how_many(problems) + "; " + what_was_not_done + ".\n"};
}

Outcome done_in_part(std::string out,
                     const std::vector<base::Problem>& problems,
                     const std::string& what_was_not_done) {
  return {.code = ExitCode::table_refused,
          .out = std::move(out),
          .err = one_a_line(problems) + how_many(problems) + "; " + what_was_not_done + ".\n"};
}

Outcome wrong_usage(const std::vector<base::Problem>& problems, const std::string& command) {
  const std::string where = command.empty() ? "keenfall help" : "keenfall help " + command;
  return {.code = ExitCode::wrong_usage,
          .out = "",
          .err = one_a_line(problems) + "\"" + where + "\" shows what can be asked for.\n"};
}

}  // namespace keenfall::cli
