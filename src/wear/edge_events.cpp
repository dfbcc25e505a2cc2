#include "wear/edge_events.h"

#include <cmath>

namespace keenfall::wear {

HitSource::HitSource(numerics::RandomStream random)
    : random_(random), hits_until_next_(random_.exponential()) {}

std::vector<TimedHit> HitSource::hits_in(const HardParticles& particles,
                                         double edge_length_um,
                                         long cuts) {
  std::vector<TimedHit> hits;
  const double hits_per_cut = particles.hits_per_mm_cut * edge_length_um * 1e-3;
  const double expected = hits_per_cut * static_cast<double>(cuts);
  while (hits_until_next_ < expected) {
    const long cut = std::min(cuts - 1, static_cast<long>(hits_until_next_ / hits_per_cut));
    hits.push_back({.cut = cut, .hit = random_hit(particles, edge_length_um, random_)});
    hits_until_next_ += random_.exponential();
  }
  hits_until_next_ -= expected;
  return hits;
}

std::vector<TimedTwist> twists_in(const TwistAsked& asked,
                                  long cuts,
                                  numerics::RandomStream& random) {
  std::vector<TimedTwist> twists;
  const double mean_load = asked.twist.mean_line_load_newton_per_mm;
  if (mean_load <= 0) return twists;
  const double patches =
      std::max(1.0, std::round(asked.edge_length_um * 1e-3 / asked.twist.patch_length_mm));
  const double chance = std::exp(-asked.threshold_newton_per_mm / mean_load);
  const double log_none = std::log1p(-chance);
  if (log_none == 0) return twists;
  // Patches of all cuts in one row: the gaps between loads past the threshold are geometric, and
  // the excess over it is exponential again.
  const double places = patches * static_cast<double>(cuts);
  double place = std::floor(std::log(random.uniform()) / log_none);
  while (place < places) {
    const double cut = std::floor(place / patches);
    twists.push_back({.cut = static_cast<long>(cut),
                      .load = {.patch = static_cast<std::size_t>(place - cut * patches),
                               .line_load_newton_per_mm = asked.threshold_newton_per_mm +
                                                          mean_load * random.exponential()}});
    place += 1 + std::floor(std::log(random.uniform()) / log_none);
  }
  return twists;
}

}  // namespace keenfall::wear
