// What simulated edges are cut with, before the steel is known: one medium, or several with pauses
// in a fixed order that begins anew until the cuts are spent.
#pragma once

#include "materials/microstructure.h"
#include "wear/cutting_work.h"
#include "wear/media_presets.h"

#include <string>
#include <variant>
#include <vector>

namespace keenfall::wear {

// How fast the land grows while an edge rests wet: some 0.1 mm of metal a year. A guess, and the
// same for every steel: bounds wide enough for stainless steel in water (a hundredth) and carbon
// steel in acid food (ten times as much).
inline constexpr double kWetLandGrowthUmPerHour = 0.01;
inline constexpr double kLeastWetLandGrowthUmPerHour = 0.0001;
inline constexpr double kMostWetLandGrowthUmPerHour = 0.1;

struct WorkStep {
  std::variant<AbrasiveMedium, WetPause> what;
  long cuts = 0;  // of a pause: not used

  bool operator==(const WorkStep&) const = default;
};

// With a single medium its step's cuts do not matter.
struct WorkPlan {
  std::string name;  // as a table names the medium
  std::vector<WorkStep> steps;

  bool operator==(const WorkPlan&) const = default;
};

[[nodiscard]] WorkPlan work_in(const AbrasiveMedium& medium);

// The medium where all work is in one and without pauses; null: mixed work.
[[nodiscard]] const AbrasiveMedium* only_medium(const WorkPlan& plan);

// At least one step cuts; pauses alone are refused by the simulator, since nothing can be read.
struct WorkAsked {
  long cuts = 0;
  // How severe this run is: times the wear rate and the number of hits. Sideways loads act by a
  // threshold, not a rate, and stay as they are.
  double dose_ratio = 1;
};
[[nodiscard]] Schedule schedule_of(const WorkPlan& plan,
                                   const materials::Microstructure& steel,
                                   const WorkAsked& asked);

}  // namespace keenfall::wear
