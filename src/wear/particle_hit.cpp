#include "wear/particle_hit.h"

#include <cmath>
#include <numbers>

namespace keenfall::wear {

namespace {

constexpr double kMm2PerUm2 = 1e-6;
constexpr double kMmPerUm = 1e-3;

}  // namespace

ParticleHit random_hit(const HardParticles& particles,
                       double edge_length_um,
                       numerics::RandomStream& random) {
  const double position = edge_length_um * random.uniform();
  const double diameter = particles.median_diameter_um *
                          std::exp(std::log(particles.diameter_spread_ratio) * random.normal());
  const double force = std::numbers::pi / 4 * diameter * diameter * kMm2PerUm2 *
                       particles.pushback_pressure_mpa * random.exponential();
  const double angle = std::abs(random.normal()) * particles.angle_rms_deg * std::numbers::pi / 180;
  // Past a right angle a hit is as one from the other side.
  return {.position_um = position,
          .diameter_um = diameter,
          .along_force_newton = force * std::abs(std::cos(angle)),
          .side_force_newton = force * std::abs(std::sin(angle))};
}

HitDamage damage_of(const ParticleHit& hit, const StruckApex& apex, double land_width_um) {
  HitDamage damage;
  const double depth =
      dent_depth_um(apex.steel,
                    apex.wedge,
                    land_width_um,
                    {.force_newton = hit.along_force_newton, .diameter_um = hit.diameter_um});
  const double half_contact = std::sqrt(hit.diameter_um * depth);
  damage.dent = {.depth_um = depth, .half_length_um = half_contact};
  const SidewaysLoad load{.force_newton = hit.side_force_newton,
                          .contact_length_um = 2 * half_contact};
  if (const auto chip = chip_depth_um(apex.steel, apex.wedge, land_width_um, load)) {
    return {.chip = {.depth_um = *chip,
                     .half_length_um = apex.rules.chip_aspect * *chip / 2 + half_contact}};
  }
  if (const auto hinge = fold_height_um(apex.steel, apex.wedge, land_width_um, load)) {
    damage.fold = {.depth_um = *hinge, .half_length_um = half_contact + *hinge};
  }
  return damage;
}

double hits_per_mm_cut(const GritDose& dose, const HardParticles& particles) {
  const double log_sd = std::log(particles.diameter_spread_ratio);
  const double median_mm = particles.median_diameter_um * kMmPerUm;
  // Means of D and D^3 over a lognormal diameter.
  const double mean_mm = median_mm * std::exp(0.5 * log_sd * log_sd);
  const double cube_mm3 = median_mm * median_mm * median_mm * std::exp(4.5 * log_sd * log_sd);
  const double particle_g = dose.mineral_density_g_per_cm3 * 1e-3 * std::numbers::pi / 6 * cube_mm3;
  const double met_g =
      dose.grit_mass_fraction * dose.medium_density_g_per_cm3 * 1e-3 * dose.section_mm2 * mean_mm;
  return met_g / (particle_g * dose.edge_used_mm);
}

}  // namespace keenfall::wear
