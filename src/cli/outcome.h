// What a command has to say and the code it ends with. Nothing is printed before it is complete.
#pragma once

#include "base/result.h"
#include "cli/exit_codes.h"

#include <string>
#include <vector>

namespace keenfall::cli {

struct Outcome {
  ExitCode code = ExitCode::answered;
  std::string out;  // for standard output
  std::string err;  // for standard error
};

// One problem a line, and how many there were.
[[nodiscard]] Outcome refused(const std::vector<base::Problem>& problems,
                              const std::string& what_was_not_done = "nothing was judged");

// What of it could be done stands in `out`; of the rest, one problem a line and then what was not
// done.
[[nodiscard]] Outcome done_in_part(std::string out,
                                   const std::vector<base::Problem>& problems,
                                   const std::string& what_was_not_done);

// A wrong command or option: what is wrong, and where the right ones are listed.
[[nodiscard]] Outcome wrong_usage(const std::vector<base::Problem>& problems,
                                  const std::string& command);

}  // namespace keenfall::cli
