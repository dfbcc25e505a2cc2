#include "numerics/exponential_path.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <cmath>
#include <vector>

namespace keenfall::numerics {

ExponentialPath fit_exponential_path(std::span<const double> times,
                                     std::span<const double> levels) {
  base::require(times.size() == levels.size() && times.size() >= 2,
                "a path needs as many times as levels, and two at least");
  std::vector<double> logs;
  for (const double level : levels) {
    base::require(level > 0, "a level on an exponential path lies above zero");
    logs.push_back(std::log(level));
  }
  const double mean_time = mean_of(times);
  const double mean_log = mean_of(logs);
  double together = 0;
  double alone = 0;
  for (std::size_t i = 0; i < times.size(); ++i) {
    together += (times[i] - mean_time) * (logs[i] - mean_log);
    alone += (times[i] - mean_time) * (times[i] - mean_time);
  }
  base::require(alone > 0, "a path needs two different times");
  const double rate = together / alone;
  return {.level_at_zero = std::exp(mean_log - rate * mean_time), .rate = rate};
}

std::optional<double> time_to(const ExponentialPath& path, double level) {
  base::require(level > 0, "a level on an exponential path lies above zero");
  if (!(path.rate > 0)) return std::nullopt;
  return std::log(level / path.level_at_zero) / path.rate;
}

}  // namespace keenfall::numerics
