#include "blunting/inference/straightened_density.h"

#include "blunting/inference/curvature.h"
#include "numerics/random.h"

#include <Eigen/SparseCholesky>

#include <cmath>
#include <utility>

namespace keenfall::blunting {

namespace {

using Vector = Eigen::VectorXd;
using Factor = Eigen::SimplicialLLT<Eigen::SparseMatrix<double>>;

constexpr int kMostNewtonSteps = 30;

std::span<const double> as_span(const Vector& v) {
  return {v.data(), static_cast<std::size_t>(v.size())};
}

std::span<double> as_span(Vector& v) { return {v.data(), static_cast<std::size_t>(v.size())}; }

// One where a coordinate is a level, zero where it is the log of a scale.
Vector all_but_scales(const ParameterLayout& at) {
  Vector mask = Vector::Ones(static_cast<Eigen::Index>(at.dimension));
  const auto hold = [&mask](std::size_t first, std::size_t count) {
    mask.segment(static_cast<Eigen::Index>(first), static_cast<Eigen::Index>(count)).setZero();
  };
  hold(at.log_start_scatter, 1);
  hold(at.log_run_scatter, at.scatters);
  hold(at.log_reading_scatter, 1);
  hold(at.log_checkpoint_scatter, at.has_checkpoint_scatter ? 1 : 0);
  hold(at.log_shape_scatter, at.has_shape_level ? 1 : 0);
  hold(at.log_block_scatter, at.block_count > 0 ? 1 : 0);
  hold(at.log_specimen_scatter, at.specimen_count > 0 ? 1 : 0);
  return mask;
}

// Climbs to the mode of the levels, the scales held.
Vector climb(BluntingDensity& density, Vector q) {
  const Vector levels = all_but_scales(density.layout());
  Vector gradient(q.size());
  double log_density = density(as_span(std::as_const(q)), as_span(gradient));
  for (int step = 0; step < kMostNewtonSteps; ++step) {
    const Factor factor(expected_curvature(density, as_span(std::as_const(q))));
    const Vector direction = factor.solve(Vector(gradient.cwiseProduct(levels)));
    double length = 1;
    bool climbed = false;
    for (int halving = 0; halving < 12 && !climbed; ++halving, length /= 2) {
      const Vector next = q + length * direction.cwiseProduct(levels);
      Vector next_gradient(q.size());
      const double next_density = density(as_span(next), as_span(next_gradient));
      if (!(next_density > log_density)) continue;
      climbed = next_density - log_density > 1e-3;
      q = next;
      gradient = next_gradient;
      log_density = next_density;
      break;
    }
    if (!climbed) break;
  }
  return q;
}

}  // namespace

struct StraightenedDensity::Map {
  Vector mode;
  Factor factor;
};

StraightenedDensity::StraightenedDensity(const BluntingDensity& density, std::vector<double> start)
    : density_(density) {
  const auto map = std::make_shared<Map>();
  map->mode = climb(
      density_, Eigen::Map<const Vector>(start.data(), static_cast<Eigen::Index>(start.size())));
  map->factor.compute(expected_curvature(density_, as_span(std::as_const(map->mode))));
  map_ = map;
}

StraightenedDensity::~StraightenedDensity() = default;
StraightenedDensity::StraightenedDensity(const StraightenedDensity&) = default;
StraightenedDensity::StraightenedDensity(StraightenedDensity&&) noexcept = default;

std::vector<double> StraightenedDensity::unstraightened(std::span<const double> z) const {
  const Eigen::Map<const Vector> coordinates(z.data(), static_cast<Eigen::Index>(z.size()));
  const Vector q = map_->mode + map_->factor.permutationPinv() *
                                    map_->factor.matrixU().solve(Vector(coordinates));
  return {q.data(), q.data() + q.size()};
}

double StraightenedDensity::operator()(std::span<const double> z, std::span<double> gradient) {
  const std::vector<double> q = unstraightened(z);
  Vector by_q(static_cast<Eigen::Index>(q.size()));
  const double log_density = density_(q, as_span(by_q));
  Eigen::Map<Vector>(gradient.data(), static_cast<Eigen::Index>(gradient.size())) =
      map_->factor.matrixL().solve(Vector(map_->factor.permutationP() * by_q));
  return log_density;
}

std::vector<double> StraightenedDensity::start_for(base::Seed seed, std::uint64_t chain) const {
  constexpr std::uint64_t kStartStream = 1000;  // apart from the chains' own streams
  numerics::RandomStream random(seed, kStartStream + chain);
  std::vector<double> z(static_cast<std::size_t>(map_->mode.size()));
  for (double& coordinate : z) coordinate = random.normal();
  return z;
}

}  // namespace keenfall::blunting
