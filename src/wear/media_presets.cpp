#include "wear/media_presets.h"

#include <array>

namespace keenfall::wear {

namespace {

AbrasiveMedium clean_matting() {
  AbrasiveMedium medium{.name = "new sisal matting",
                        .abrasive_hv = 700,
                        .groove_width_um = 1,
                        .reference_wear_rate_mm3_per_newton_metre = 6e-7};
  medium.acts = {.name = medium.name,
                 .particles = {.hits_per_mm_cut = 0.001},
                 .twist = {.mean_line_load_newton_per_mm = 0.03}};
  return medium;
}

// Quartz sand and dust walked into it.
AbrasiveMedium gritty_matting() {
  AbrasiveMedium medium{.name = "uplifted sisal matting",
                        .abrasive_hv = 1100,
                        .groove_width_um = 3,
                        .reference_wear_rate_mm3_per_newton_metre = 9e-7};
  medium.acts = {.name = medium.name,
                 .particles = {.hits_per_mm_cut = 0.4},
                 .twist = {.mean_line_load_newton_per_mm = 0.05}};
  return medium;
}

}  // namespace

std::span<const AbrasiveMedium> known_media() {
  static const std::array kMedia{clean_matting(), gritty_matting()};
  return kMedia;
}

CutMedium medium_for(const AbrasiveMedium& medium, const materials::Microstructure& steel) {
  CutMedium made = medium.acts;
  made.name = medium.name;
  const double resistance =
      materials::abrasion_resistance(steel,
                                     {.abrasive_hv = medium.abrasive_hv,
                                      .groove_width_um = medium.groove_width_um,
                                      .resistance_ratio_cap = medium.resistance_ratio_cap});
  made.wear.wear_rate_mm3_per_newton_metre =
      medium.reference_wear_rate_mm3_per_newton_metre / resistance;
  return made;
}

ApexSteel apex_steel(const materials::Microstructure& steel, double flaw_constant) {
  const double stress = flow_stress_mpa(steel.bulk_hv);
  return {.flow_stress_mpa = stress,
          .transition_section_um =
              transition_section_um({.toughness_mpa_sqrt_m = steel.toughness_mpa_sqrt_m,
                                     .flow_stress_mpa = stress,
                                     .flaw_constant = flaw_constant})};
}

EdgeFinish fine_finish() {
  return {.land_width_um = 0.5, .tooth_depth_um = 0.6, .tooth_spacing_um = 8};
}

EdgeFinish coarse_finish() {
  return {.land_width_um = 0.8, .tooth_depth_um = 6, .tooth_spacing_um = 28};
}

}  // namespace keenfall::wear
