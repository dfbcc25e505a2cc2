#include "benchmarks/gritty_edges.h"

#include "wear/apex_scenario.h"
#include "wear/media_presets.h"

namespace keenfall::benchmarks {

wear::ApexSimulation gritty_edges(long cuts) {
  const wear::ApexScenario scenario{.steels = {materials::find_microstructure("AISI A11").value()},
                                    .work = wear::work_in(wear::known_media()[1]),
                                    .edge = {.finish = wear::fine_finish()}};
  wear::ApexSimulation simulation = wear::simulation_of(scenario, 0, cuts);
  simulation.read_at_cuts = {0, cuts};
  return simulation;
}

}  // namespace keenfall::benchmarks
