#include "blunting/quick/scatter_group.h"

#include "blunting/inference/place_in.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

namespace {

double squared(double value) { return value * value; }

Eigen::Vector3d as_vector(const CurvePointOfRun& at) {
  return {at.log_start, at.log_half_keenness, at.log_shape};
}

}  // namespace

Eigen::Matrix2d run_precision(const Hyperparameters& at) {
  const double half = 1 / squared(at.run);
  Eigen::Matrix2d precision;
  precision << 1 / squared(at.start) + squared(at.start_effect) * half, -at.start_effect * half,
      -at.start_effect * half, half;
  return precision;
}

ScatterGroup::ScatterGroup(const BluntingData& data,
                           const ModelSpec& spec,
                           const ModelParts& parts,
                           const std::vector<std::size_t>& media)
    : data_(data),
      spec_(spec),
      parts_(parts),
      centres_(spec.centres.value_or(data.data_centres)),
      media_(media) {
  scales_.robust = parts.robust;
  scales_.higher_is_keener = data.higher_is_keener();
  if (data.repeat_degrees_of_freedom > 0 && data.repeat_sum_of_squares > 0) {
    scales_.reading_scatter =
        std::sqrt(data.repeat_sum_of_squares / data.repeat_degrees_of_freedom);
  }
  if (parts.checkpoint_error) scales_.checkpoint_scatter = spec.priors.checkpoint_scatter;
  std::vector<std::size_t> blocks;
  std::vector<std::size_t> specimens;
  for (const RunData& run : data.runs) {
    const auto medium = std::ranges::find(media_, run.medium);
    if (medium == media_.end()) continue;
    Member member{.run = &run,
                  .arm = place_in(arms_, run.arm),
                  .medium = static_cast<std::size_t>(medium - media_.begin())};
    if (parts.blocks && run.block) member.block = place_in(blocks, *run.block) + 1;
    if (parts.specimens && run.specimen) {
      member.specimen = place_in(specimens, *run.specimen) + 1;
    }
    first_guess(member);
    members_.push_back(std::move(member));
  }
  pieces_.resize(arms_.size());
  for (const Member& member : members_) {
    if (member.specimen > 0) (void)place_in(pieces_[member.arm], member.specimen - 1);
  }
  blocks_ = blocks.size();
  specimens_ = specimens.size();
  place_levels();
}

// What is asked for stands last, so that it can be drawn without the rest.
void ScatterGroup::place_levels() {
  const auto take = [this](std::size_t count) {
    const std::size_t first = dimension_;
    dimension_ += count;
    return first;
  };
  order_drift_at_ = take(parts_.order_drift ? 1 : 0);
  first_block_ = take(blocks_);
  first_shape_mean_ = take(parts_.shared_shape ? media_.size() : 0);
  first_specimen_ = take(specimens_);
  first_arm_ = take(3 * arms_.size());
}

// The first reading, and the cuts at which the readings doubled; a fair shape.
void ScatterGroup::first_guess(Member& member) const {
  const std::vector<Checkpoint>& checkpoints = member.run->checkpoints;
  double start = centres_.log_start;
  for (const Checkpoint& checkpoint : checkpoints) {
    if (checkpoint.below_resolution) continue;
    start = checkpoint.log_bluntness;
    break;
  }
  double half = checkpoints.back().log_cuts + 1;
  for (const Checkpoint& checkpoint : checkpoints) {
    if (checkpoint.below_resolution || checkpoint.cuts <= 0) continue;
    if (checkpoint.log_bluntness - start < std::log(2.0)) continue;
    half = checkpoint.log_cuts;
    break;
  }
  member.at = {.log_start = start,
               .log_half_keenness = half,
               .log_shape = std::log(spec_.priors.shape_centre)};
}

ScatterGroup::Eliminated ScatterGroup::eliminate(const Member& member,
                                                 const Eigen::Matrix2d& prior) const {
  const RunQuadratic& run = member.quadratic;
  const Eigen::Matrix2d whole = run.information.topLeftCorner<2, 2>() + prior;
  const Eigen::Matrix2d spread = whole.inverse();
  const Eigen::Vector2d slope = run.slope.head<2>();
  const Eigen::Vector2d with_shape = run.information.topRightCorner<2, 1>();
  const Eigen::Matrix2d prior_spread = prior * spread;
  Eliminated left;
  left.spread = spread;
  // prior - prior spread prior, without taking a large number from another.
  const Eigen::Matrix2d both = prior_spread * run.information.topLeftCorner<2, 2>();
  left.information.topLeftCorner<2, 2>() = 0.5 * (both + both.transpose());
  left.information.topRightCorner<2, 1>() = prior_spread * with_shape;
  left.information.bottomLeftCorner<1, 2>() = left.information.topRightCorner<2, 1>().transpose();
  left.information(2, 2) = run.information(2, 2) - with_shape.dot(spread * with_shape);
  left.slope.head<2>() = prior_spread * slope;
  left.slope[2] = run.slope[2] - with_shape.dot(spread * slope);
  left.log_constant =
      0.5 * (slope.dot(spread * slope) + std::log(prior.determinant() / whole.determinant()));
  return left;
}

void ScatterGroup::add_priors(const Hyperparameters& at,
                              Eigen::MatrixXd& precision,
                              Eigen::VectorXd& pull) const {
  const PriorScales& priors = spec_.priors;
  const auto add = [&](std::size_t index, double centre, double sd) {
    const auto i = static_cast<Eigen::Index>(index);
    precision(i, i) += 1 / squared(sd);
    pull[i] += centre / squared(sd);
  };
  if (parts_.order_drift) add(order_drift_at_, 0, priors.order_drift);
  for (std::size_t b = 0; b < blocks_; ++b) add(first_block_ + b, 0, at.block);
  for (std::size_t s = 0; s < specimens_; ++s) add(first_specimen_ + s, 0, at.specimen);
  const double log_centre = std::log(priors.shape_centre);
  for (std::size_t a = 0; a < arms_.size(); ++a) {
    const std::size_t first = levels_of(a);
    add(first, centres_.log_start, priors.log_start_sd);
    add(first + 1, centres_.log_half_keenness, priors.log_half_keenness_sd);
    if (!parts_.shared_shape) {
      add(first + 2, log_centre, priors.log_shape_sd);
      continue;
    }
    const std::size_t medium = static_cast<std::size_t>(
        std::ranges::find(media_, data_.medium_of_arm[arms_[a]]) - media_.begin());
    const auto shape = static_cast<Eigen::Index>(first + 2);
    const auto mean = static_cast<Eigen::Index>(first_shape_mean_ + medium);
    const double tie = 1 / squared(at.shape);
    precision(shape, shape) += tie;
    precision(mean, mean) += tie;
    precision(shape, mean) -= tie;
    precision(mean, shape) -= tie;
  }
  for (std::size_t m = 0; parts_.shared_shape && m < media_.size(); ++m) {
    add(first_shape_mean_ + m, log_centre, priors.log_shape_sd);
  }
}

GivenNormal ScatterGroup::given(const Hyperparameters& at) const {
  const auto n = static_cast<Eigen::Index>(dimension_);
  Eigen::MatrixXd precision = Eigen::MatrixXd::Zero(n, n);
  Eigen::VectorXd pull = Eigen::VectorXd::Zero(n);
  add_priors(at, precision, pull);
  const Eigen::Matrix2d prior = run_precision(at);
  double constant = -static_cast<double>(blocks_) * std::log(at.block) -
                    static_cast<double>(specimens_) * std::log(at.specimen);
  if (parts_.shared_shape) constant -= static_cast<double>(arms_.size()) * std::log(at.shape);
  for (const Member& member : members_) {
    const Eliminated left = eliminate(member, prior);
    const Eigen::Vector3d offset = as_vector(member.at);
    const Eigen::Vector3d towards = left.information * offset + left.slope;
    constant += left.log_constant - offset.dot(0.5 * left.information * offset + left.slope);
    for (std::size_t row = 0; row < 3; ++row) {
      each_column(member, row, [&](std::size_t i, double at_i) {
        pull[static_cast<Eigen::Index>(i)] += at_i * towards[static_cast<Eigen::Index>(row)];
        for (std::size_t other = 0; other < 3; ++other) {
          const double information = at_i * left.information(static_cast<Eigen::Index>(row),
                                                             static_cast<Eigen::Index>(other));
          each_column(member, other, [&](std::size_t j, double at_j) {
            precision(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) +=
                information * at_j;
          });
        }
      });
    }
  }
  const Eigen::LLT<Eigen::MatrixXd> solver(precision);
  GivenNormal given{.mean = solver.solve(pull), .factor = solver.matrixL()};
  given.log_evidence =
      constant + 0.5 * pull.dot(given.mean) - given.factor.diagonal().array().log().sum();
  return given;
}

void ScatterGroup::move_to(const Eigen::VectorXd& mean, const Hyperparameters& at) {
  constexpr double kLongestStep = 1;  // in logs: far guesses are approached in steps
  const Eigen::Matrix2d prior = run_precision(at);
  for (Member& member : members_) {
    Eigen::Vector3d y = -as_vector(member.at);
    for (std::size_t row = 0; row < 3; ++row) {
      each_column(member, row, [&](std::size_t i, double at_i) {
        y[static_cast<Eigen::Index>(row)] += at_i * mean[static_cast<Eigen::Index>(i)];
      });
    }
    const RunQuadratic& run = member.quadratic;
    const Eigen::Matrix2d spread = eliminate(member, prior).spread;
    const Eigen::Vector2d step =
        spread *
        (run.slope.head<2>() - run.information.topRightCorner<2, 1>() * y[2] + prior * y.head<2>());
    member.at.log_start += std::clamp(step[0], -kLongestStep, kLongestStep);
    member.at.log_half_keenness += std::clamp(step[1], -kLongestStep, kLongestStep);
    member.at.log_shape += std::clamp(y[2], -0.5, 0.5);
  }
}

// Scales that are not integrated: by what the residuals show at the mode.
void ScatterGroup::estimate_scales() {
  const double runs = static_cast<double>(members_.size());
  const double arms = static_cast<double>(arms_.size());
  double squares = 0;
  double readings = 0;
  double relative = 0;
  for (const Member& member : members_) {
    squares += member.quadratic.weighted_squares;
    readings += member.quadratic.readings;
    for (const Checkpoint& checkpoint : member.run->checkpoints) {
      if (!checkpoint.below_resolution) relative += checkpoint.relative_variance;
    }
  }
  const double spare = std::max(1.0, readings - 1.5 * runs - arms);
  relative /= std::max(1.0, readings);
  const double now =
      squared(scales_.checkpoint_scatter) + relative * squared(scales_.reading_scatter);
  const double wanted = now * squares / spare;
  if (!parts_.checkpoint_error) {
    const double degrees = data_.repeat_degrees_of_freedom;
    const double variance =
        (data_.repeat_sum_of_squares + spare * wanted / std::max(relative, 1e-9)) /
        (degrees + spare);
    scales_.reading_scatter = std::sqrt(std::clamp(variance, 1e-8, 4.0));
    return;
  }
  // In logs, the moment and the prior each by its precision.
  const double left = wanted - relative * squared(scales_.reading_scatter);
  const double moment = std::max(left, 1e-6);
  const double moment_precision = 2 * spare * squared(moment / std::max(wanted, 1e-12));
  const double prior_precision = 1 / squared(spec_.priors.log_scatter_sd);
  const double log_scatter = (moment_precision * 0.5 * std::log(moment) +
                              prior_precision * std::log(spec_.priors.checkpoint_scatter)) /
                             (moment_precision + prior_precision);
  // The root of the mean square, which is what errors add up to: the log is known no better than
  // this.
  scales_.checkpoint_scatter = std::exp(log_scatter + 1 / (moment_precision + prior_precision));
}

void ScatterGroup::settle(const Hyperparameters& at, int rounds) {
  for (int round = 0; round < rounds; ++round) {
    for (Member& member : members_) {
      member.quadratic = run_quadratic(*member.run, member.at, scales_);
    }
    if (round > 1) estimate_scales();
    move_to(given(at).mean, at);
  }
  for (Member& member : members_) {
    member.quadratic = run_quadratic(*member.run, member.at, scales_);
  }
}

}  // namespace keenfall::blunting
