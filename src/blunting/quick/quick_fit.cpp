#include "blunting/quick/quick_fit.h"

#include "blunting/quick/scatter_group.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace keenfall::blunting {

namespace {

// A half-normal prior as a density of the log of its scatter, up to a constant.
double log_half_normal(double scatter, double scale) {
  const double z = scatter / scale;
  return -0.5 * z * z + std::log(scatter);
}

// Gauss-Hermite, 5 nodes, for a standard normal (Abramowitz & Stegun 1964, table 25.10, rescaled).
struct Node {
  double z = 0;
  double log_weight = 0;
};
const std::array<Node, 5> kNodes{{{-2.8569700138728, std::log(0.0112574113277)},
                                  {-1.3556261799743, std::log(0.2220759220056)},
                                  {0, std::log(0.5333333333333)},
                                  {1.3556261799743, std::log(0.2220759220056)},
                                  {2.8569700138728, std::log(0.0112574113277)}}};

struct Part {
  GivenScatters given;
  double weight = 0;
};

// A scatter with its prior's weight.
struct PriorNode {
  double scatter = 1;
  double log_weight = 0;
};

std::vector<PriorNode> log_normal_nodes(bool has, double median, double log_sd) {
  std::vector<PriorNode> nodes;
  for (const Node& node : kNodes) {
    nodes.push_back({.scatter = median * std::exp(log_sd * node.z), .log_weight = node.log_weight});
  }
  return has ? nodes : std::vector<PriorNode>{{.scatter = median}};
}

// Half-normal, on a grid even in logs.
std::vector<PriorNode> half_normal_nodes(bool has, double scale) {
  if (!has) return {{.scatter = scale}};
  std::vector<PriorNode> nodes;
  for (double scatter = 0.05 * scale; scatter < 4 * scale; scatter *= 1.6) {
    nodes.push_back({.scatter = scatter, .log_weight = log_half_normal(scatter, scale)});
  }
  return nodes;
}

// The mixture over the scatters: parts worth a draw, their weights adding up to 1.
std::vector<Part> mixture_of(const ScatterGroup& group, const PriorScales& priors) {
  constexpr double kSmallest = 0.02;
  constexpr double kRatio = 1.22;
  constexpr int kSteps = 24;  // up to 2
  constexpr double kNegligible = -9;
  const std::vector<PriorNode> blocks =
      log_normal_nodes(group.has_blocks(), priors.block_scatter, priors.log_scatter_sd);
  const std::vector<PriorNode> specimens =
      half_normal_nodes(group.has_specimens(), priors.specimen_scatter);
  std::vector<Part> parts;
  double largest = -HUGE_VAL;
  for (const PriorNode& block : blocks) {
    for (const PriorNode& specimen : specimens) {
      double best_here = -HUGE_VAL;
      for (int step = 0; step < kSteps; ++step) {
        const Scatters scatters{.run = kSmallest * std::pow(kRatio, step),
                                .block = block.scatter,
                                .specimen = specimen.scatter};
        GivenScatters given = group.given(scatters);
        const double log_weight = given.log_evidence + block.log_weight + specimen.log_weight +
                                  log_half_normal(scatters.run, priors.run_scatter);
        largest = std::max(largest, log_weight);
        best_here = std::max(best_here, log_weight);
        if (log_weight > largest + kNegligible) {
          parts.push_back({.given = std::move(given), .weight = log_weight});
        } else if (log_weight < best_here + kNegligible) {
          break;  // past the peak
        }
      }
    }
  }
  double total = 0;
  for (Part& part : parts) total += part.weight = std::exp(part.weight - largest);
  for (Part& part : parts) part.weight /= total;
  return parts;
}

// Evenly spread points of the unit cube: Richtmyer's sequence, fractions of multiples of square
// roots of primes (Niederreiter 1978, section 3).
class EvenPoints {
 public:
  explicit EvenPoints(std::size_t dimension) {
    for (std::size_t candidate = 2; steps_.size() < dimension; ++candidate) {
      bool is_prime = true;
      for (std::size_t d = 2; d * d <= candidate; ++d) is_prime = is_prime && candidate % d != 0;
      if (is_prime) steps_.push_back(std::fmod(std::sqrt(static_cast<double>(candidate)), 1.0));
    }
    place_.resize(dimension, 0.5);
  }

  // The next point as standard normals, by pairs (Box & Muller 1958).
  void next_normals(Eigen::VectorXd& normals) {
    for (std::size_t i = 0; i < place_.size(); ++i) {
      place_[i] += steps_[i];
      if (place_[i] >= 1) place_[i] -= 1;
    }
    for (Eigen::Index i = 0; i < normals.size(); i += 2) {
      const auto at = static_cast<std::size_t>(i);
      const double radius = std::sqrt(-2 * std::log(1 - place_[at]));
      const double angle = 2 * std::numbers::pi * place_[at + 1];
      normals[i] = radius * std::cos(angle);
      if (i + 1 < normals.size()) normals[i + 1] = radius * std::sin(angle);
    }
  }

 private:
  std::vector<double> steps_;
  std::vector<double> place_;
};

// Draws of what stands last in the parts: arms' levels and, before them, specimens.
class Drawer {
 public:
  Drawer(const ScatterGroup& group, std::size_t dimension, QuickFit& fit)
      : group_(group),
        fit_(fit),
        count_(static_cast<Eigen::Index>(dimension - group.first_specimen())),
        points_(static_cast<std::size_t>(count_ + count_ % 2)),
        noise_(count_) {}

  void draw(const std::vector<Part>& parts) {
    double reached = 0;
    std::size_t drawn = 0;
    for (const Part& part : parts) {
      reached += part.weight;
      const auto until =
          static_cast<std::size_t>(std::llround(reached * static_cast<double>(kQuickDraws)));
      for (; drawn < until; ++drawn) keep_one(part.given);
    }
    for (; drawn < kQuickDraws; ++drawn) keep_one(parts.back().given);
  }

 private:
  void keep_one(const GivenScatters& given) {
    points_.next_normals(noise_);
    given.factor.bottomRightCorner(count_, count_)
        .triangularView<Eigen::Lower>()
        .transpose()
        .solveInPlace(noise_);
    levels_ = given.mean.tail(count_) + noise_;
    keep();
  }

  void keep() {
    const std::size_t first = group_.first_specimen();
    for (std::size_t place = 0; place < group_.arms().size(); ++place) {
      const auto at = static_cast<Eigen::Index>(group_.levels_of(place) - first);
      double pieces = 0;
      for (const std::size_t piece : group_.pieces()[place]) {
        pieces += levels_[static_cast<Eigen::Index>(piece)] /
                  static_cast<double>(group_.pieces()[place].size());
      }
      ArmDraws& arm = fit_.arms[group_.arms()[place]];
      arm.log_start.push_back(levels_[at]);
      arm.log_half_keenness.push_back(levels_[at + 1] + pieces);
      arm.log_half_keenness_steel.push_back(levels_[at + 1]);
      arm.shape.push_back(std::exp(levels_[at + 2]));
    }
  }

  const ScatterGroup& group_;
  QuickFit& fit_;
  Eigen::Index count_;
  EvenPoints points_;
  Eigen::VectorXd noise_;
  Eigen::VectorXd levels_;
};

// The scatter that the evidence and its prior favour, on a coarse grid.
double likely_run_scatter(const ScatterGroup& group, const PriorScales& priors) {
  double best = 0;
  double most = -HUGE_VAL;
  for (double scatter = 0.04; scatter < 1.5; scatter *= 1.5) {
    const double log_weight =
        group.given({.run = scatter}).log_evidence + log_half_normal(scatter, priors.run_scatter);
    if (log_weight > most) most = log_weight, best = scatter;
  }
  return best;
}

}  // namespace

QuickFit quick_fit(const BluntingData& data, const ModelSpec& spec) {
  constexpr int kFirstRounds = 6;
  constexpr int kLastRounds = 3;
  const ModelParts parts = parts_for(spec, data);
  std::vector<std::vector<std::size_t>> groups;
  for (std::size_t m = 0; m < data.media.size(); ++m) {
    if (parts.scatter_by_medium || groups.empty()) groups.emplace_back();
    groups.back().push_back(m);
  }
  QuickFit fit;
  fit.arms.resize(data.arms.size());
  for (const std::vector<std::size_t>& media : groups) {
    ScatterGroup group(data, spec, parts, media);
    group.settle({}, kFirstRounds);
    group.settle({.run = likely_run_scatter(group, spec.priors)}, kLastRounds);
    group.centre_on_mean({.run = likely_run_scatter(group, spec.priors)});
    const std::vector<Part> parts_of_group = mixture_of(group, spec.priors);
    const auto dimension = static_cast<std::size_t>(parts_of_group.front().given.mean.size());
    Drawer(group, dimension, fit).draw(parts_of_group);
  }
  return fit;
}

}  // namespace keenfall::blunting
