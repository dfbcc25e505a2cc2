#include "base/execution.h"

#include "base/require.h"

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <mutex>
#include <thread>

namespace keenfall::base {

Executor one_thread() {
  return [](const std::vector<Task>& tasks) {
    for (const Task& task : tasks) task();
  };
}

Executor threads(unsigned thread_count) {
  require(thread_count >= 1, "an executor needs at least one thread");
  if (thread_count == 1) return one_thread();
  return [thread_count](const std::vector<Task>& tasks) {
    std::atomic<std::size_t> next{0};
    std::exception_ptr first_failure;
    std::mutex failure_guard;
    const auto work = [&] {
      for (std::size_t i = next++; i < tasks.size(); i = next++) {
        try {
          tasks[i]();
        } catch (const std::exception&) {
          const std::scoped_lock lock(failure_guard);
          if (!first_failure) first_failure = std::current_exception();
        }
      }
    };
    {
      std::vector<std::jthread> pool;
      const std::size_t count = std::min<std::size_t>(thread_count, tasks.size());
      for (std::size_t i = 1; i < count; ++i) pool.push_back(std::jthread(work));
      work();
    }
    if (first_failure) std::rethrow_exception(first_failure);
  };
}

ProgressReport unwatched() {
  return [](const Progress&) { return true; };
}

}  // namespace keenfall::base
