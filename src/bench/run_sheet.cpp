#include "bench/run_sheet.h"

#include "base/require.h"

namespace keenfall::bench {

base::Result<RunSheet> sheet_of(const trials::Plan& plan,
                                std::size_t planned_run,
                                const trials::ReadingKind& kind) {
  base::require(planned_run < plan.runs.size(), "the plan has such a run");
  const trials::PlannedRun& planned = plan.runs[planned_run];
  const trials::PlannedArm& arm = plan.arms.at(planned.arm);
  const trials::PlannedCutting& cutting = plan.cuttings.at(arm.cutting);
  if (cutting.checkpoint_cuts.empty()) {
    return base::failed({.kind = base::ProblemKind::missing,
                         .sentence = "The plan does not say when an edge that cuts " +
                                     cutting.medium.name + " is read.",
                         .place = {.column = "checkpoint_cuts"},
                         .accepted = "checkpoints that rise from 0"});
  }
  const std::string block = std::to_string(planned.block);
  return RunSheet{.run = {.name = block,
                          .arm = {.blade = arm.blade,
                                  .edge = arm.edge,
                                  .medium = cutting.medium,
                                  .method = cutting.method},
                          .specimen = planned.specimen,
                          .block = block,
                          .order = planned.order,
                          .medium_lot = cutting.lot},
                  .counted = plan.counted,
                  .kind = kind,
                  .unit = plan.reading.unit.empty() ? kind.unit : plan.reading.unit,
                  .thread = plan.reading.thread,
                  .thread_lot = plan.reading.thread_lot,
                  .repeats = plan.reading.repeats,
                  .stations = plan.reading.stations,
                  .checkpoint_cuts = cutting.checkpoint_cuts,
                  .start_gate = plan.start_gate,
                  .stop = plan.stop};
}

std::string station_in_turn(const RunSheet& sheet, std::size_t taken) {
  return sheet.stations.empty() ? "" : sheet.stations[taken % sheet.stations.size()];
}

}  // namespace keenfall::bench
