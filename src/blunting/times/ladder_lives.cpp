#include "blunting/times/ladder_lives.h"

#include "base/plain_number.h"

#include <array>
#include <map>

namespace keenfall::blunting {

namespace {

constexpr int kHighestRung = 9;

struct Tries {
  int passed = 0;
  int all = 0;

  [[nodiscard]] bool pass() const { return 2 * passed > all; }
};

std::map<double, Tries> tries_by_cuts(const trials::Trial& trial,
                                      const trials::Run& run,
                                      int rung) {
  std::map<double, Tries> tries;
  for (const trials::Reading& reading : run.readings) {
    if (trial.series.at(reading.series).kind.name != "pass_ladder" || reading.struck_reason)
      continue;
    Tries& here = tries[reading.cuts];
    ++here.all;
    if (reading.reading >= rung) ++here.passed;
  }
  return tries;
}

}  // namespace

std::optional<LadderLife> ladder_life(const trials::Trial& trial,
                                      const trials::Run& run,
                                      int rung) {
  const std::map<double, Tries> tries = tries_by_cuts(trial, run, rung);
  if (tries.empty()) return std::nullopt;
  LadderLife life;
  for (const auto& [cuts, here] : tries) {
    if (!here.pass()) {
      if (!life.failed_by_cuts) life.failed_by_cuts = cuts;
    } else if (!life.failed_by_cuts) {
      life.lasted_cuts = cuts;
    } else if (life.remarks.empty()) {
      life.remarks.push_back("passes again at " + so_many(base::plain_number(cuts), trial.counted) +
                             " after failing at " + base::plain_number(*life.failed_by_cuts) +
                             ": the first failure counts");
    }
  }
  return life;
}

std::optional<int> default_rung(const trials::Trial& trial) {
  std::optional<int> best;
  std::array<int, 2> best_counts{};
  for (int rung = kHighestRung; rung >= 1; --rung) {
    std::array<int, 2> counts{};  // seen to pass then fail; seen to fail
    bool any = false;
    for (const trials::Run& run : trial.runs) {
      if (run.voided_reason) continue;
      const auto life = ladder_life(trial, run, rung);
      if (!life) continue;
      any = true;
      if (!life->failed_by_cuts || *life->failed_by_cuts == 0) continue;
      ++counts[1];
      if (life->lasted_cuts > 0) ++counts[0];
    }
    if (any && (!best || counts > best_counts)) {
      best = rung;
      best_counts = counts;
    }
  }
  return best;
}

}  // namespace keenfall::blunting
