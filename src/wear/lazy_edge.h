// The edge while it is cut. Between two sharings of the load, each segment's squared land grows by
// its share times one dose common to all, exactly; so only the segments that something happens to
// are brought up to date.
//
// `dose` is always the dose since the load was last shared, in um^2 of squared land for a share
// of 1. A segment's sharp apex (where its flanks would meet) stays where it is while wear, dents
// and folds only shorten the wedge: height = sharp apex - land / (2 t).
#pragma once

#include "wear/edge_line.h"
#include "wear/particle_hit.h"
#include "wear/simulated_edge.h"

#include <cstdint>
#include <deque>
#include <vector>

namespace keenfall::wear {

class LazyEdge {
 public:
  LazyEdge(const EdgeStart& start, const StruckApex& apex);

  // Adds the dose for good, then shares the load anew among segments as they stand.
  void settle(double dose_um2, double compliance_um);
  // Adds the dose for good, then widens every land.
  void corrode(double dose_um2, double land_growth_um);

  void strike(const ParticleHit& hit, long cut, double dose_um2);
  void twist(const TwistLoad& load, double patch_length_um, double dose_um2);
  // The cut in which the next fold falls off, or -1; folds of that cut fall off.
  [[nodiscard]] long next_fold_due() const;
  void drop_folds(double dose_um2);

  [[nodiscard]] std::size_t size() const { return stored_.size(); }
  // As of the last sharing.
  [[nodiscard]] double mean_squared_land_um2() const { return mean_squared_land_; }
  [[nodiscard]] double least_land_um() const { return least_land_; }

  [[nodiscard]] EdgeLine line(double dose_um2) const;
  [[nodiscard]] std::vector<double> load_shares() const;  // mean 1
  [[nodiscard]] const DamageCounts& counts() const { return counts_; }
  [[nodiscard]] const MetalLost& lost() const { return lost_; }

 private:
  struct Range {
    std::size_t first = 0;
    std::size_t past = 0;
  };
  struct DueFold {
    long cut = 0;
    Range range;
  };

  [[nodiscard]] double land(std::size_t i, double dose) const;
  void set_land(std::size_t i, double land, double dose);
  [[nodiscard]] Range covered(double position_um, double half_length_um) const;
  template <class Change>
  void along(const Trace& trace, double position_um, const Change& change);
  void dent(std::size_t i, double depth, double dose);
  void fold(std::size_t i, double height, long due);
  void chip(std::size_t i, double depth, double dose);
  void book_dose(double dose);

  double segment_um_;
  StruckApex apex_;
  double per_two_tangents_;
  double start_land_;
  long fold_life_;
  std::vector<double> stored_;  // squared land less share x dose at the last change
  std::vector<double> unworn_height_;
  std::vector<double> share_;
  std::vector<double> fold_;
  std::vector<double> chip_;
  std::vector<long> fold_due_;
  std::deque<DueFold> due_;
  double share_scale_ = 0;
  double mean_squared_land_ = 0;
  double least_land_ = 0;
  DamageCounts counts_;
  MetalLost lost_;
};

}  // namespace keenfall::wear
