// What a tell command asks for, read from its options and checked.
#pragma once

#include "base/result.h"
#include "cli/judge_request.h"
#include "cli/typed_options.h"

#include <string>

namespace keenfall::cli {

enum class ReportFormat {
  html,  // a page that anybody can open
  json,  // the whole report
  csv    // the readings alone, as a table
};

struct TellRequest {
  JudgeRequest judging;
  ReportFormat format = ReportFormat::html;
  std::string out;  // the file to write; empty: standard output
};

// Fails with a problem for each option whose value cannot be used, and where no file to read is
// named. Without --format the name after --out decides; one of the two there must be.
[[nodiscard]] base::ResultOrProblems<TellRequest> tell_request(const TypedOptions& typed,
                                                               unsigned threads_at_hand);

}  // namespace keenfall::cli
