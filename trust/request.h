// What `keenfall_trust` is asked: which experiments, how many trials, where to keep them.
#pragma once

#include "base/result.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::trust {

struct Request {
  std::vector<std::string> names;  // kinds, cells or experiments; empty: all
  bool list = false;
  int most_trials = 1'000'000;  // of each experiment
  unsigned threads = 1;
  std::string folder = "build/trust";
  std::string code;    // as MadeBy
  std::string commit;  // likewise
};

// words: without the program's name. usual_threads: where none are asked for.
[[nodiscard]] base::ResultOrProblems<Request> request_of(std::span<const std::string> words,
                                                         unsigned usual_threads);

}  // namespace keenfall::trust
