// What a judge or demo command asks for, read from its options and checked.
#pragma once

#include "base/result.h"
#include "cli/typed_options.h"
#include "workbench/judge_tables.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::cli {

enum class JsonTo { nowhere, standard_output, file };

struct JudgeRequest {
  std::vector<std::string> tables;
  workbench::JudgeOptions options;
  unsigned threads = 1;
  JsonTo json_to = JsonTo::nowhere;
  std::string json_file;
  std::string table_file;                // of demo; empty: none
  std::optional<base::Seed> trial_seed;  // of demo; absent: its own
  bool quiet = false;
};

// Fails with one problem for each option whose value cannot be used, all at once.
[[nodiscard]] base::ResultOrProblems<JudgeRequest> judge_request(const TypedOptions& typed,
                                                                 unsigned threads_at_hand);

}  // namespace keenfall::cli
