#include "benchmarks/judged.h"

#include "cli/progress_line.h"
#include "workbench/judge_tables.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <thread>

namespace keenfall::benchmarks {

verdicts::Judgement judged(const trials::Trial& trial, const base::ProgressReport& progress) {
  const unsigned threads = std::max(1U, std::thread::hardware_concurrency());
  const auto judgements = workbench::judge_trial(trial, {}, base::threads(threads), progress);
  if (!judgements) throw std::runtime_error(base::in_words(judgements.error().front()));
  const verdicts::Judgement& judgement = judgements->front();
  if (!judgement.fit.usable) {
    throw std::runtime_error(
        fmt::format("the fit is not usable: {}", judgement.fit.reasons.front()));
  }
  return judgement;
}

base::ProgressReport shown_progress() {
  if (::isatty(STDERR_FILENO) == 0) return base::unwatched();
  const auto line = std::make_shared<cli::ProgressLine>(
      [](const std::string& text) { fmt::print(stderr, "{}", text); },
      [] {
        return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch())
            .count();
      });
  return [line](const base::Progress& progress) {
    if (progress.fraction_done >= 1) {
      line->erase();
    } else {
      line->show(progress);
    }
    return true;
  };
}

}  // namespace keenfall::benchmarks
