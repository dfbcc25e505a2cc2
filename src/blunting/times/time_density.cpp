#include "blunting/times/time_density.h"

#include "blunting/inference/model_spec.h"
#include "numerics/random.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace keenfall::blunting {

namespace {

constexpr double kSdOfLogistic = std::numbers::pi / std::numbers::sqrt3;
constexpr double kRoughLogScatterVariance = 0.1;  // some 1 / (2 x 5 degrees of freedom)

// Log prior of a half-normal scatter s given as log s, Jacobian included; and its derivative.
struct LogPrior {
  double value = 0;
  double slope = 0;
};

LogPrior half_normal(double log_s, double prior_scale) {
  const double square = std::exp(2 * log_s) / (prior_scale * prior_scale);
  return {.value = log_s - 0.5 * square, .slope = 1 - square};
}

LogPrior normal(double x, double centre, double sd) {
  const double z = (x - centre) / sd;
  return {.value = -0.5 * z * z, .slope = -z / sd};
}

// Effects in units of their scatter, and what they and the scatter add to density and gradient.
double add_effects(std::span<const double> q,
                   std::span<double> gradient,
                   std::span<const double> slopes,
                   const LogPrior& scatter_prior) {
  const double scatter = std::exp(q[0]);
  double value = scatter_prior.value;
  gradient[0] = scatter_prior.slope;
  for (std::size_t i = 0; i < slopes.size(); ++i) {
    const double z = q[i + 1];
    value -= 0.5 * z * z;
    gradient[i + 1] = slopes[i] * scatter - z;
    gradient[0] += slopes[i] * scatter * z;
  }
  return value;
}

}  // namespace

struct TimeDensity::Slopes {
  std::vector<double> arm;
  std::vector<double> log_scatter;
  std::vector<double> block;
  std::vector<double> specimen;
};

TimeDensity::TimeDensity(const TimeData& data) : data_(data) {
  for (const TimeRun& run : data.runs) bounds_.push_back(run.log_bounds());
  const RunGroups& groups = data.groups;
  first_scatter_ = groups.arms.size();
  first_block_ = first_scatter_ + groups.media.size();
  first_specimen_ = first_block_ + (groups.block_count > 0 ? 1 + groups.block_count : 0);
  dimension_ = first_specimen_ + (groups.specimen_count > 0 ? 1 + groups.specimen_count : 0);
}

TimeValues TimeDensity::values_at(std::span<const double> q) const {
  const RunGroups& groups = data_.groups;
  TimeValues values;
  values.arm.assign(q.begin(), q.begin() + static_cast<std::ptrdiff_t>(groups.arms.size()));
  for (std::size_t m = 0; m < groups.media.size(); ++m) {
    values.run_scatter.push_back(std::exp(q[first_scatter_ + m]));
  }
  if (groups.block_count > 0) values.block_scatter = std::exp(q[first_block_]);
  for (std::size_t b = 0; b < groups.block_count; ++b) {
    values.block.push_back(values.block_scatter * q[first_block_ + 1 + b]);
  }
  if (groups.specimen_count > 0) values.specimen_scatter = std::exp(q[first_specimen_]);
  for (std::size_t s = 0; s < groups.specimen_count; ++s) {
    values.specimen.push_back(values.specimen_scatter * q[first_specimen_ + 1 + s]);
  }
  return values;
}

double TimeDensity::add_runs(const TimeValues& values, Slopes& slopes) const {
  double value = 0;
  for (std::size_t r = 0; r < bounds_.size(); ++r) {
    const GroupsOfRun& group = data_.groups.runs[r];
    double location = values.arm[group.arm];
    if (group.block) location += values.block[*group.block];
    if (group.specimen) location += values.specimen[*group.specimen];
    const double of_runs = values.run_scatter[group.medium] * values.run_scatter[group.medium];
    const double in_all = of_runs + kTestError * kTestError;
    const TimeLikelihood run =
        likelihood_of_bounds(bounds_[r], location, std::sqrt(in_all) / kSdOfLogistic);
    value += run.log_likelihood;
    slopes.arm[group.arm] += run.by_location;
    slopes.log_scatter[group.medium] += run.by_log_scale * of_runs / in_all;
    if (group.block) slopes.block[*group.block] += run.by_location;
    if (group.specimen) slopes.specimen[*group.specimen] += run.by_location;
  }
  return value;
}

double TimeDensity::operator()(std::span<const double> q, std::span<double> gradient) const {
  constexpr double kOutside = -std::numeric_limits<double>::infinity();
  const PriorScales priors;
  const RunGroups& groups = data_.groups;
  const TimeValues values = values_at(q);
  for (const double scatter : values.run_scatter) {
    if (!(scatter > 0) || std::isinf(scatter)) return kOutside;
  }
  Slopes slopes{.arm = std::vector<double>(groups.arms.size()),
                .log_scatter = std::vector<double>(groups.media.size()),
                .block = std::vector<double>(groups.block_count),
                .specimen = std::vector<double>(groups.specimen_count)};
  double value = add_runs(values, slopes);
  for (std::size_t a = 0; a < groups.arms.size(); ++a) {
    const LogPrior prior = normal(q[a], data_.log_centre, priors.log_half_keenness_sd);
    value += prior.value;
    gradient[a] = slopes.arm[a] + prior.slope;
  }
  for (std::size_t m = 0; m < groups.media.size(); ++m) {
    const LogPrior prior = half_normal(q[first_scatter_ + m], priors.run_scatter);
    value += prior.value;
    gradient[first_scatter_ + m] = slopes.log_scatter[m] + prior.slope;
  }
  if (groups.block_count > 0) {
    value +=
        add_effects(q.subspan(first_block_),
                    gradient.subspan(first_block_),
                    slopes.block,
                    normal(q[first_block_], std::log(priors.block_scatter), priors.log_scatter_sd));
  }
  if (groups.specimen_count > 0) {
    value += add_effects(q.subspan(first_specimen_),
                         gradient.subspan(first_specimen_),
                         slopes.specimen,
                         half_normal(q[first_specimen_], priors.specimen_scatter));
  }
  return std::isfinite(value) ? value : kOutside;
}

std::vector<double> TimeDensity::start_for(base::Seed seed, std::uint64_t chain) const {
  constexpr std::uint64_t kStreams = 7000;  // apart from those of the sampler's chains
  numerics::RandomStream random(seed, kStreams + chain);
  const PriorScales priors;
  const RunGroups& groups = data_.groups;
  std::vector<double> q;
  for (std::size_t i = 0; i < dimension_; ++i) q.push_back(0.3 * random.normal());
  for (std::size_t a = 0; a < groups.arms.size(); ++a) q[a] += data_.log_centre;
  for (std::size_t m = 0; m < groups.media.size(); ++m) {
    q[first_scatter_ + m] += std::log(priors.run_scatter);
  }
  if (groups.block_count > 0) q[first_block_] += std::log(priors.block_scatter);
  if (groups.specimen_count > 0) q[first_specimen_] += std::log(priors.specimen_scatter);
  return q;
}

std::vector<double> TimeDensity::rough_variances() const {
  const PriorScales priors;
  const RunGroups& groups = data_.groups;
  std::vector<double> runs(groups.arms.size());
  for (const GroupsOfRun& run : groups.runs) ++runs[run.arm];
  std::vector<double> variances(dimension_, 1.0);
  for (std::size_t a = 0; a < runs.size(); ++a) {
    variances[a] = priors.run_scatter * priors.run_scatter / runs[a];
  }
  for (std::size_t m = 0; m < groups.media.size(); ++m) {
    variances[first_scatter_ + m] = kRoughLogScatterVariance;
  }
  if (groups.block_count > 0) {
    variances[first_block_] = priors.log_scatter_sd * priors.log_scatter_sd;
  }
  return variances;
}

}  // namespace keenfall::blunting
