#include "cli/written_answer.h"

#include "workbench/written_file.h"

namespace keenfall::cli {

Outcome delivered(const WrittenAnswer& answer, const std::optional<std::string>& json_to) {
  if (!json_to) return {.out = answer.text};
  if (json_to->empty()) return {.out = answer.json};
  Outcome outcome{.out = answer.text};
  const auto problem =
      workbench::write_whole_file(*json_to, answer.json, workbench::Existing::is_replaced);
  if (problem) {
    outcome.err = in_words(*problem) + "\n";
    outcome.code = ExitCode::file_trouble;
  }
  return outcome;
}

}  // namespace keenfall::cli
