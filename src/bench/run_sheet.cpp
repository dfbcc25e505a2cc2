#include "bench/run_sheet.h"

namespace keenfall::bench {

base::Result<RunSheet> sheet_of(const trials::Plan& plan,
                                const RunToCut& run,
                                const trials::ReadingKind& kind) {
  if (run.arm >= plan.arms.size()) {
    return base::failed({.kind = base::ProblemKind::unknown_name,
                         .sentence = "The plan has no arm " + std::to_string(run.arm + 1) + ".",
                         .place = {.column = "arm"},
                         .accepted = "an arm of the plan; it may have been changed since"});
  }
  const trials::PlannedArm& arm = plan.arms[run.arm];
  const trials::PlannedCutting& cutting = plan.cuttings.at(arm.cutting);
  if (cutting.checkpoint_cuts.empty()) {
    return base::failed({.kind = base::ProblemKind::missing,
                         .sentence = "The plan does not say when an edge that cuts " +
                                     cutting.medium.name + " is read.",
                         .place = {.column = "checkpoint_cuts"},
                         .accepted = "checkpoints that rise from 0"});
  }
  return RunSheet{.run = {.name = run.name,
                          .arm = {.blade = arm.blade,
                                  .edge = arm.edge,
                                  .medium = cutting.medium,
                                  .method = cutting.method},
                          .specimen = run.specimen,
                          .block = std::to_string(run.block),
                          .order = run.order,
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
