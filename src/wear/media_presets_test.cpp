#include "wear/media_presets.h"

#include "wear/abrasive_wear.h"

#include <gtest/gtest.h>

namespace keenfall::wear {
namespace {

materials::Microstructure steel(std::string_view name) {
  return materials::find_microstructure(name).value();
}

// By hand from the resistance law (docs/methods/materials.md): the matrices differ 1.77-fold under
// a soft abrasive, carbides lend 2.45 against 1.02; under quartz with wide grooves 1.84 in all.
TEST(MediaPresets, SpreadSteelsMoreUnderASoftAbrasive) {
  const auto ratio = [](const AbrasiveMedium& medium) {
    return medium_for(medium, steel("75Ni8")).wear.wear_rate_mm3_per_newton_metre /
           medium_for(medium, steel("AISI A11")).wear.wear_rate_mm3_per_newton_metre;
  };

  EXPECT_NEAR(ratio(known_media()[0]), 4.27, 0.03);
  EXPECT_NEAR(ratio(known_media()[1]), 1.84, 0.02);
}

// t* of two steels of the table: 3.3 and 57 um.
TEST(MediaPresets, TakeFlowStressAndTransitionFromTheMicrostructure) {
  EXPECT_NEAR(apex_steel(steel("AISI A11")).transition_section_um, 3.3, 0.05);
  EXPECT_NEAR(apex_steel(steel("75Ni8")).transition_section_um, 57, 0.6);
  EXPECT_NEAR(apex_steel(steel("AISI A11")).flow_stress_mpa, 9.81 * 746 / 3, 1e-9);
}

// tau_w = w0^2 / (4 t k P s); half keenness of pure wear in clean stock: 228 and 53 cuts, by hand.
TEST(MediaPresets, GiveTheWearLivesOfHandCalculation) {
  const auto half = [](std::string_view name) {
    const CutMedium medium = medium_for(known_media()[0], steel(name));
    return 3 * wear_life_cuts(medium.wear, wedge_of({15}), 0.5);
  };

  EXPECT_NEAR(half("AISI A11"), 228, 1.5);
  EXPECT_NEAR(half("75Ni8"), 53.4, 0.5);
}

}  // namespace
}  // namespace keenfall::wear
