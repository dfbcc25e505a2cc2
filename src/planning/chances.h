// What a plan can find out: the chance of each verdict, at stated true ratios.
//
// The plan is cut in imagination, hundreds of times, with what is assumed of it (assumptions.h),
// and every such trial is judged by the quick engine and the rules of the verdicts. Asked about is
// the first arm of a cutting against its last, the other arms lying between; intervals hold for all
// pairs together. Where the plan has several looks, each is judged with wider intervals, and the
// first settled verdict stands.
// The same seed gives the same chances on one thread and on many. Fails when the plan has nothing
// to compare there, when what is assumed cannot be, or when asked to stop.
// Method page: docs/methods/planning.md
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "planning/assumptions.h"
#include "trials/blade.h"
#include "trials/plan.h"
#include "trials/reading_kind.h"
#include "verdicts/verdict.h"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace keenfall::planning {

inline constexpr int kRoughTrials = 60;   // a first answer, to a twentieth or so
inline constexpr int kUsualTrials = 400;  // a chance is then right to 2.5 % or better
inline constexpr std::size_t kVerdicts = 8;

struct Chance {
  double probability = 0;
  // Standard error from the number of trials (Agresti & Coull 1998, so that none of 60 is not
  // taken for never).
  double error = 0;

  bool operator==(const Chance&) const = default;
};

// Of so many trials so many.
[[nodiscard]] Chance chance_from(int count, int trials);

struct ChancesAt {
  double true_ratio = 1;                     // of the first arm's lasting to the last's
  std::array<Chance, kVerdicts> verdicts{};  // by verdicts::Verdict
  Chance settled;                            // any verdict but not settled
  Chance wrong;                              // settled, and the truth is otherwise
  double runs_each = 0;  // cut on average: fewer than planned where a look settles it

  [[nodiscard]] const Chance& of(verdicts::Verdict verdict) const {
    return verdicts[static_cast<std::size_t>(verdict)];
  }
  bool operator==(const ChancesAt&) const = default;
};

struct ChancesAsked {
  std::size_t cutting = 0;  // index into Plan::cuttings
  double worth_it_margin = 1.5;
  std::vector<double> true_ratios;  // empty: usual_ratios
  int trials = kUsualTrials;
  base::Seed seed;
  trials::ReadingKind kind = *trials::find_reading_kind("thread_push");  // that the plan reads
  std::vector<trials::Blade> blades;  // for specimens, where the plan is not shuffled yet
};

struct PlanChances {
  std::vector<ChancesAt> at;  // by rising ratio
  int trials = 0;             // imagined for each ratio
  base::Seed seed;

  bool operator==(const PlanChances&) const = default;
};

// 1, the root of the margin, the margin, 2, 3 and one's own, rising, each once.
[[nodiscard]] std::vector<double> usual_ratios(double worth_it_margin,
                                               std::optional<double> own = std::nullopt);

// Whether a verdict on a over b says what is not so. Not settled is never wrong.
[[nodiscard]] bool is_wrong(verdicts::Verdict verdict, double true_ratio, double worth_it_margin);

[[nodiscard]] base::Result<PlanChances> chances_of(const trials::Plan& plan,
                                                   const Assumptions& assumptions,
                                                   const ChancesAsked& asked,
                                                   const base::Executor& execute,
                                                   const base::ProgressReport& report);

}  // namespace keenfall::planning
