// Simulations for tests: steels and media with the constants of docs/methods/apex.md as plain
// numbers.
#pragma once

#include "wear/simulated_edge.h"

namespace keenfall::wear {

inline ApexSteel steel_of(double hardness_hv, double toughness_mpa_sqrt_m) {
  const double stress = flow_stress_mpa(hardness_hv);
  return {.flow_stress_mpa = stress,
          .transition_section_um = transition_section_um(
              {.toughness_mpa_sqrt_m = toughness_mpa_sqrt_m, .flow_stress_mpa = stress})};
}

inline ApexSteel hard_chipping_steel() { return steel_of(746, 14); }
inline ApexSteel tough_bending_steel() { return steel_of(577, 45); }

inline CutMedium wear_only() {
  return {.name = "wear only", .wear = {.wear_rate_mm3_per_newton_metre = 1.5e-7}};
}

inline CutMedium gritty() {
  return {.name = "gritty",
          .wear = {.wear_rate_mm3_per_newton_metre = 3e-7},
          .particles = {.hits_per_mm_cut = 0.4},
          .twist = {.mean_line_load_newton_per_mm = 0.05}};
}

inline EdgeFinish fine_finish() {
  return {.land_width_um = 0.5, .tooth_depth_um = 0.6, .tooth_spacing_um = 8};
}

inline ApexSimulation cut_in(const CutMedium& medium, long cuts) {
  return {.edge = {.finish = fine_finish()},
          .steel = hard_chipping_steel(),
          .schedule = {{.what = medium, .cuts = cuts}},
          .read_at_cuts = {0, cuts},
          .keep_sections = true};
}

inline std::vector<SimulatedEdge> simulated(const ApexSimulation& simulation,
                                            int runs = 1,
                                            std::uint64_t seed = 1) {
  return simulate(simulation, {.runs = runs, .seed = {seed}}, base::one_thread()).value();
}

}  // namespace keenfall::wear
