// For long tests: how many simulated trials were asked for by KEENFALL_TRIALS.
#pragma once

#include <cstdlib>
#include <string>

namespace keenfall::verdicts::testing {

inline int trials_asked_for(int usual) {
  const char* asked = std::getenv("KEENFALL_TRIALS");  // NOLINT(concurrency-mt-unsafe)
  return asked == nullptr ? usual : std::stoi(asked);
}

}  // namespace keenfall::verdicts::testing
