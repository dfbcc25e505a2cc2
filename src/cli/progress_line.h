// One line on a terminal that says how far the work is and how long it will take; shown when it
// takes longer than a second, erased at the end.
#pragma once

#include "base/execution.h"

#include <cstddef>
#include <functional>
#include <mutex>
#include <string>

namespace keenfall::cli {

// "fitting the curves: 42 %, about 3 s left". No remaining time before there is something to go by.
[[nodiscard]] std::string progress_words(const base::Progress& progress, double elapsed_s);

class ProgressLine {
 public:
  // `write` shows text at once; empty where nobody watches.
  ProgressLine(std::function<void(const std::string&)> write, std::function<double()> seconds_now);

  // May be called from several threads.
  void show(const base::Progress& progress);
  void erase();

 private:
  std::function<void(const std::string&)> write_;
  std::function<double()> seconds_now_;
  double begun_s_ = 0;
  double shown_s_ = 0;
  std::size_t shown_length_ = 0;
  std::mutex guard_;
};

}  // namespace keenfall::cli
