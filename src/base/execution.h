// How long work is run and watched: an executor that runs independent tasks, and a progress report
// that may ask to stop. The engine owns no threads; whoever calls it passes these in, and numbers
// never depend on which executor was passed.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace keenfall::base {

using Task = std::function<void()>;

// Runs every task, in any order or at once, and returns when all are done.
// An exception thrown by a task is rethrown to the caller after the others have ended.
using Executor = std::function<void(const std::vector<Task>& tasks)>;

[[nodiscard]] Executor one_thread();
// At most `thread_count` tasks at once (at least 1).
[[nodiscard]] Executor threads(unsigned thread_count);

struct Progress {
  double fraction_done = 0;  // 0 to 1
  std::string stage;         // plain words: "fitting the curves"
};

// Called now and then, possibly from several threads at once (one call at a time per task);
// returns false to ask the work to stop.
using ProgressReport = std::function<bool(const Progress&)>;

// Reports to nobody and never stops.
[[nodiscard]] ProgressReport unwatched();

}  // namespace keenfall::base
