#include "cli/ending.h"

#include <future>
#include <thread>

namespace keenfall::cli {

void done_within(std::chrono::milliseconds time,
                 const std::function<void()>& work,
                 const std::function<void()>& otherwise) {
  std::promise<void> done;
  std::thread watch([is_done = done.get_future(), time, &otherwise] {
    if (is_done.wait_for(time) == std::future_status::timeout) otherwise();
  });
  work();
  done.set_value();
  watch.join();
}

}  // namespace keenfall::cli
