// The work of a request, with progress shown and Ctrl-C heard.
#pragma once

#include "base/execution.h"
#include "cli/judge_request.h"
#include "cli/progress_line.h"
#include "cli/surroundings.h"

#include <functional>
#include <string>

namespace keenfall::cli {

// What `work(executor, report)` returns.
template <class Work>
[[nodiscard]] auto watched(const JudgeRequest& request,
                           const Surroundings& surroundings,
                           const Work& work) {
  const auto nobody = std::function<void(const std::string&)>();
  ProgressLine line(request.quiet ? nobody : surroundings.write_progress, surroundings.seconds_now);
  const base::ProgressReport report = [&](const base::Progress& progress) {
    line.show(progress);
    return !surroundings.is_stop_asked_for();
  };
  auto outcome = work(base::threads(request.threads), report);
  line.erase();
  return outcome;
}

}  // namespace keenfall::cli
