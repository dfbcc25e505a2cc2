// Ending in time, whatever is still being done.
#pragma once

#include <chrono>
#include <functional>

namespace keenfall::cli {

// Does the work. Where it takes longer than that, `otherwise` is called meanwhile, once and on
// another thread; it may end the process.
void done_within(std::chrono::milliseconds time,
                 const std::function<void()>& work,
                 const std::function<void()>& otherwise);

}  // namespace keenfall::cli
