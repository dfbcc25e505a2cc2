#include "wear/edge_life.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace keenfall::wear {

namespace {

constexpr std::uint64_t kTwistStreams = 1ULL << 32;
constexpr long kNever = std::numeric_limits<long>::max();

class Life {
 public:
  Life(const ApexSimulation& simulation, const LifeOfEdge& life)
      : simulation_(simulation),
        wedge_(wedge_of(simulation.edge.apex_angle)),
        start_(started_edge(simulation.edge)),
        edge_(simulation.edge,
              {.steel = simulation.steel, .wedge = wedge_, .rules = simulation.damage}),
        length_um_(static_cast<double>(edge_.size()) * segment_length_um(simulation.edge)),
        hits_(numerics::RandomStream(life.seed, life.run)),
        twists_(life.seed, life.run + kTwistStreams) {}

  SimulatedEdge through(std::span<const Stretch> stretches) {
    read_until(0, 0);
    for (const Stretch& stretch : stretches) {
      if (stretch.pause != nullptr) {
        rest(stretch.pause->duration_hour * stretch.pause->land_growth_um_per_hour);
        continue;
      }
      long left = stretch.cuts;
      while (left > 0) {
        const long to_refresh =
            simulation_.share_refresh_cuts - cut_ % simulation_.share_refresh_cuts;
        const long cuts = std::min(left, to_refresh);
        cut_on(*stretch.medium, cuts);
        left -= cuts;
      }
    }
    rest(0);
    return {.readings = std::move(readings_), .counts = edge_.counts(), .lost = edge_.lost()};
  }

 private:
  void rest(double land_growth_um) {
    edge_.corrode(pending_dose_, land_growth_um);
    pending_dose_ = 0;
  }

  // So many cuts in one medium, the load shared once at their start.
  void cut_on(const CutMedium& medium, long cuts) {
    edge_.settle(pending_dose_, medium.wear.load_share_compliance_um);
    wear_ = {.growth_um2_per_cut = squared_land_growth_um2_per_cut(medium.wear, wedge_),
             .load_growth_exponent = medium.wear.load_growth_exponent,
             .first_squared_land_um2 = std::pow(simulation_.edge.finish.land_width_um, 2)};
    const auto hits = hits_.hits_in(medium.particles, length_um_, cuts);
    const auto twists = twists_in({.twist = medium.twist,
                                   .edge_length_um = length_um_,
                                   .threshold_newton_per_mm = twist_threshold_newton_per_mm(
                                       simulation_.steel, wedge_, edge_.least_land_um())},
                                  cuts,
                                  twists_);
    const double patches =
        std::max(1.0, std::round(length_um_ * 1e-3 / medium.twist.patch_length_mm));
    auto hit = hits.begin();
    auto twist = twists.begin();
    while (true) {
      const long hit_cut = hit == hits.end() ? kNever : hit->cut;
      const long twist_cut = twist == twists.end() ? kNever : twist->cut;
      const long due_at = edge_.next_fold_due();
      const long due_cut = due_at < 0 ? kNever : std::max(0L, due_at - cut_);
      const long next = std::min({hit_cut, twist_cut, due_cut});
      if (next >= cuts) break;
      read_until(cut_ + next, cuts);
      const double dose = dose_after(next + 1);
      if (hit_cut == next) {
        edge_.strike((hit++)->hit, cut_ + next, dose);
      } else if (twist_cut == next) {
        TwistLoad load = (twist++)->load;
        load.cut = cut_ + next;
        edge_.twist(load, length_um_ / patches, dose);
      } else {
        edge_.drop_folds(dose);
      }
    }
    read_until(cut_ + cuts, cuts);
    pending_dose_ = dose_after(cuts);
    cut_ += cuts;
  }

  [[nodiscard]] double dose_after(long cuts) const {
    return dose_um2(wear_, edge_.mean_squared_land_um2(), static_cast<double>(cuts));
  }

  // Reads at the cuts asked for up to this one.
  void read_until(long cut, long cuts_at_hand) {
    const auto& asked = simulation_.read_at_cuts;
    while (readings_.size() < asked.size() && asked[readings_.size()] <= cut) {
      const long at = asked[readings_.size()];
      readings_.push_back(read(at, cuts_at_hand == 0 ? 0 : dose_after(at - cut_)));
    }
  }

  [[nodiscard]] EdgeReading read(long cuts, double dose) const {
    EdgeLine line = edge_.line(dose);
    const double push = push_reading_um(line, simulation_.reading);
    EdgeReading reading{.cuts = cuts,
                        .push_um = push,
                        .slice_um = slice_reading_um(line, simulation_.reading),
                        .force_newton_per_mm = force_newton_per_mm(push, wedge_, simulation_.force),
                        .damage = damage_summary(line, start_, simulation_.visible_chip_um)};
    if (simulation_.keep_sections) reading.section = std::move(line);
    return reading;
  }

  const ApexSimulation& simulation_;
  Wedge wedge_;
  EdgeLine start_;
  LazyEdge edge_;
  double length_um_;
  HitSource hits_;
  numerics::RandomStream twists_;
  WearDose wear_;
  double pending_dose_ = 0;
  long cut_ = 0;
  std::vector<EdgeReading> readings_;
};

}  // namespace

SimulatedEdge lived(const ApexSimulation& simulation,
                    std::span<const Stretch> stretches,
                    const LifeOfEdge& life) {
  return Life(simulation, life).through(stretches);
}

}  // namespace keenfall::wear
