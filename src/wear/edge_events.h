// What chance brings to an edge: hits by particles and sideways loads worth looking at, over a
// number of cuts, in the order they come.
#pragma once

#include "numerics/random.h"
#include "wear/cutting_work.h"

#include <vector>

namespace keenfall::wear {

struct TimedHit {
  long cut = 0;  // 0 is the first cut asked for
  ParticleHit hit;
};

struct TimedTwist {
  long cut = 0;
  TwistLoad load;
};

// Waits between hits are carried over from one medium to the next, in expected hits.
class HitSource {
 public:
  explicit HitSource(numerics::RandomStream random);

  [[nodiscard]] std::vector<TimedHit> hits_in(const HardParticles& particles,
                                              double edge_length_um,
                                              long cuts);

 private:
  numerics::RandomStream random_;
  double hits_until_next_;
};

// Which sideways loads are larger than the least that can fold anything.
struct TwistAsked {
  EdgeTwist twist;
  double edge_length_um = 0;
  double threshold_newton_per_mm = 0;
};
[[nodiscard]] std::vector<TimedTwist> twists_in(const TwistAsked& asked,
                                                long cuts,
                                                numerics::RandomStream& random);

}  // namespace keenfall::wear
