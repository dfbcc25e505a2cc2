#include "verdicts/compared_at.h"

#include "base/plain_number.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace keenfall::verdicts {

namespace {

// Starts further apart than a usual start gate (12 %, common practice, no source), and surely
// apart.
const double kStartGate = std::log(1.12);

bool start_differently(const blunting::ArmDraws& a, const blunting::ArmDraws& b) {
  blunting::Draws difference;
  difference.reserve(a.log_start.size());
  for (std::size_t d = 0; d < a.log_start.size(); ++d) {
    difference.push_back(a.log_start[d] - b.log_start[d]);
  }
  const numerics::Interval interval = numerics::interval_of(std::move(difference));
  return std::abs(interval.median) > kStartGate && (interval.lo95 > 0 || interval.hi95 < 0);
}

// Two significant figures of the unit it was recorded in, so that the reading can be said; whatever
// unit it is told in, it is the same reading.
double sayable(double reading, const blunting::BluntingData& data) {
  const double recorded = reading * data.recorded_per_told;
  return std::stod(base::with_figures(recorded, 2)) / data.recorded_per_told;
}

}  // namespace

double stop_level_of(const Question& question, const trials::ReadingKind& kind) {
  constexpr double kUsualStop = 4;  // common practice, no source
  if (question.stop_level) return *question.stop_level;
  return kind.default_level < 2 ? kind.default_level : kUsualStop;
}

FamilyLevel compared_at(const Question& question,
                        const blunting::BluntingData& data,
                        const blunting::BluntingFit& fit,
                        std::span<const std::size_t> arms) {
  if (question.stop_reading) {
    return {.at = {.what = ComparedAt::common_reading, .reading = *question.stop_reading}};
  }
  if (question.stop_level) {
    return {.at = {.what = ComparedAt::level, .level = *question.stop_level}};
  }
  const double level = data.kind.default_level;
  double bluntest_start = -HUGE_VAL;
  bool differ = false;
  for (const std::size_t a : arms) {
    bluntest_start = std::max(bluntest_start, numerics::median_of(fit.arms[a].log_start));
    for (const std::size_t b : arms) {
      if (a < b && start_differently(fit.arms[a], fit.arms[b])) differ = true;
    }
  }
  if (differ) {
    const double log_reading = log_reading_of(data, bluntest_start + std::log(level));
    return {
        .at = {.what = ComparedAt::common_reading, .reading = sayable(std::exp(log_reading), data)},
        .starts_differ = true};
  }
  return {
      .at = {.what = level == 2 ? ComparedAt::half_keenness : ComparedAt::level, .level = level}};
}

}  // namespace keenfall::verdicts
