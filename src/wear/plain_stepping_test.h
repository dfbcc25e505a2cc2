// The simulator written the plain way, as an oracle: every segment is brought forward at every cut,
// one after another, with the standard library's functions and a list of folds that is searched
// through. It is handed the same hits and sideways loads.
#pragma once

#include "wear/edge_events.h"
#include "wear/simulated_edge.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

namespace keenfall::wear {

class PlainEdge {
 public:
  PlainEdge(const ApexSimulation& simulation)
      : simulation_(simulation),
        line_(started_edge(simulation.edge)),
        apex_{.steel = simulation.steel,
              .wedge = wedge_of(simulation.edge.apex_angle),
              .rules = simulation.damage},
        fold_due_(line_.land_width_um.size(), -1) {}

  void share_load(double compliance_um) {
    double mean_height = 0;
    for (const double z : line_.height_um) mean_height += z / static_cast<double>(size());
    shares_.assign(size(), 0);
    double sum = 0;
    for (std::size_t i = 0; i < size(); ++i) {
      shares_[i] = std::exp((line_.height_um[i] - mean_height) / compliance_um);
      sum += shares_[i];
    }
    for (double& share : shares_) share *= static_cast<double>(size()) / sum;
  }

  void wear_on(double squared_land_growth_um2) {
    for (std::size_t i = 0; i < size(); ++i) {
      const double before = line_.land_width_um[i];
      widen(i, std::sqrt(before * before + shares_[i] * squared_land_growth_um2) - before);
    }
  }

  void strike(const ParticleHit& hit, long cut) {
    const auto at = static_cast<std::size_t>(hit.position_um / line_.segment_length_um);
    const HitDamage damage = damage_of(hit, apex_, line_.land_width_um[at]);
    for (std::size_t i = 0; i < size(); ++i) {
      const double middle = (static_cast<double>(i) + 0.5) * line_.segment_length_um;
      const auto depth = [&](const Trace& trace) {
        const double u = (middle - hit.position_um) / trace.half_length_um;
        return trace.depth_um > 0 && std::abs(u) <= 1 ? trace.depth_um * (1 - u * u) : 0;
      };
      widen(i, 2 * tangent() * depth(damage.dent));
      bend(i, depth(damage.fold), cut);
      if (depth(damage.chip) > 0) break_out(i, depth(damage.chip));
    }
  }

  void twist(const TwistLoad& load, double patch_length_um, long cut) {
    for (std::size_t i = 0; i < size(); ++i) {
      const double middle = (static_cast<double>(i) + 0.5) * line_.segment_length_um;
      if (static_cast<std::size_t>(middle / patch_length_um) != load.patch) continue;
      const double land = line_.land_width_um[i];
      const double q = load.line_load_newton_per_mm;
      if (const auto chip = twist_chip_depth_um(apex_.steel, apex_.wedge, land, q)) {
        break_out(i, *chip);
      } else if (const auto fold = twist_fold_height_um(apex_.steel, apex_.wedge, land, q)) {
        bend(i, *fold, cut);
      }
    }
  }

  void drop_folds(long cut) {
    for (std::size_t i = 0; i < size(); ++i) {
      if (line_.fold_height_um[i] > 0 && fold_due_[i] <= cut) {
        widen(i, 2 * tangent() * line_.fold_height_um[i]);
        line_.fold_height_um[i] = 0;
      }
    }
  }

  [[nodiscard]] const EdgeLine& line() const { return line_; }
  [[nodiscard]] double length_um() const {
    return static_cast<double>(size()) * line_.segment_length_um;
  }
  [[nodiscard]] double least_land_um() const {
    return *std::ranges::min_element(line_.land_width_um);
  }

 private:
  [[nodiscard]] std::size_t size() const { return line_.land_width_um.size(); }
  [[nodiscard]] double tangent() const { return apex_.wedge.tangent; }
  void widen(std::size_t i, double land_um) {
    line_.land_width_um[i] += land_um;
    line_.height_um[i] -= land_um / (2 * tangent());
  }
  void bend(std::size_t i, double height, long cut) {
    if (height <= line_.fold_height_um[i]) return;
    line_.fold_height_um[i] = height;
    fold_due_[i] = cut + std::lround(simulation_.damage.fold_life_cuts);
  }
  void break_out(std::size_t i, double depth) {
    line_.land_width_um[i] += 2 * tangent() * simulation_.damage.chip_land_gain * depth;
    line_.height_um[i] -= depth;
    line_.chip_depth_um[i] += depth;
    line_.fold_height_um[i] = std::max(0.0, line_.fold_height_um[i] - depth);
  }

  const ApexSimulation& simulation_;
  EdgeLine line_;
  StruckApex apex_;
  std::vector<double> shares_;
  std::vector<long> fold_due_;
};

// The sections at the cuts asked for, of the schedule's media (constant load, no pauses).
inline std::map<long, EdgeLine> plainly_stepped(const ApexSimulation& simulation,
                                                base::Seed seed,
                                                std::uint64_t run) {
  PlainEdge edge(simulation);
  HitSource hits{numerics::RandomStream(seed, run)};
  numerics::RandomStream twists(seed, run + (1ULL << 32));
  std::map<long, EdgeLine> sections;
  sections[0] = edge.line();
  long cut = 0;
  for (const Stretch& stretch : stretches_of(simulation.schedule)) {
    const CutMedium& medium = *stretch.medium;
    const double patches =
        std::max(1.0, std::round(edge.length_um() * 1e-3 / medium.twist.patch_length_mm));
    const double growth =
        squared_land_growth_um2_per_cut(medium.wear, wedge_of(simulation.edge.apex_angle));
    long left = stretch.cuts;
    while (left > 0) {
      const long block =
          std::min(left, simulation.share_refresh_cuts - cut % simulation.share_refresh_cuts);
      edge.share_load(medium.wear.load_share_compliance_um);
      const auto hit = hits.hits_in(medium.particles, edge.length_um(), block);
      const auto twist = twists_in(
          {.twist = medium.twist,
           .edge_length_um = edge.length_um(),
           .threshold_newton_per_mm = twist_threshold_newton_per_mm(
               simulation.steel, wedge_of(simulation.edge.apex_angle), edge.least_land_um())},
          block,
          twists);
      for (long k = 0; k < block; ++k, ++cut) {
        edge.wear_on(growth);
        for (const TimedHit& at : hit) {
          if (at.cut == k) edge.strike(at.hit, cut);
        }
        for (const TimedTwist& at : twist) {
          if (at.cut == k) edge.twist(at.load, edge.length_um() / patches, cut);
        }
        edge.drop_folds(cut);
        sections[cut + 1] = edge.line();
      }
      left -= block;
    }
  }
  return sections;
}

}  // namespace keenfall::wear
