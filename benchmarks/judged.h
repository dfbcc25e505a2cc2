// A trial judged as `keenfall judge` judges it: default settings, as many threads as cores.
#pragma once

#include "base/execution.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

namespace keenfall::benchmarks {

// Throws std::runtime_error where the trial cannot be judged or the fit is not usable: what it cost
// would then say nothing.
[[nodiscard]] verdicts::Judgement judged(const trials::Trial& trial,
                                         const base::ProgressReport& progress);

// One line on standard error that says how far the judging is; nothing where that is no terminal.
[[nodiscard]] base::ProgressReport shown_progress();

}  // namespace keenfall::benchmarks
