#include "telling/simulated.h"

#include "trials/trial.h"

#include <algorithm>

namespace keenfall::telling {

bool is_simulated(const verdicts::Judgement& judgement) {
  return std::ranges::any_of(judgement.runs, [](const verdicts::RunResult& run) {
    return std::ranges::count(run.remarks, trials::kSimulatedNote) > 0;
  });
}

}  // namespace keenfall::telling
