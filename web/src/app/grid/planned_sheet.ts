// The sheet of a trial that is planned: a column for each run in the order of cutting, a row for each
// checkpoint; above them what tells the runs apart, and below what is alike in all, so that only readings
// are typed.

import type { Plan } from "../../wire/api";
import type { Sheet } from "./sheet";

const words = (said: string | number | undefined) => (said === undefined ? "" : String(said));

/**
 * What is said of some runs only is left out: an empty cell would hold what stands to its left.
 * `cut`: places in the order whose runs are in already.
 * Nothing where no run is left.
 */
export function plannedSheet(plan: Plan | undefined, cut: readonly number[]): Sheet | undefined {
  const left = plan?.runs.filter(({ order }) => !cut.includes(order)) ?? [];
  if (!plan || left.length === 0) return undefined;
  const { reading } = plan;
  const runs = left.map((run) => {
    const arm = plan.arms[run.arm];
    const cutting = plan.cuttings[arm?.cutting ?? 0];
    return {
      run,
      blade: arm?.blade,
      edge: arm?.edge ?? {},
      cutting,
      method: cutting?.method ?? {},
    };
  });
  type Planned = (typeof runs)[number];
  const row = (name: string, of: (planned: Planned) => string | number | undefined) => [
    name,
    ...runs.map((planned) => words(of(planned))),
  ];
  const said = [
    row("blade", ({ blade }) => blade),
    row("specimen", ({ run }) => run.specimen),
    row("bevel_angle_per_side_deg", ({ edge }) => edge.bevel_angle_per_side_deg),
    row("apex_angle_per_side_deg", ({ edge }) => edge.apex_angle_per_side_deg),
    row("finish", ({ edge }) => edge.finish),
    row("thickness_behind_edge_mm", ({ edge }) => edge.thickness_behind_edge_mm),
    row("medium", ({ cutting }) => cutting?.medium),
    row("medium_condition", ({ cutting }) => cutting?.condition),
    row("medium_lot", ({ cutting }) => cutting?.lot),
    row("method", ({ method }) => method.motion ?? method.as_written),
    row("cut_length_mm", ({ method }) => method.cut_length_mm),
    row("edge_used_mm", ({ method }) => method.edge_used_mm),
    row("board", ({ method }) => method.board),
    row("run", ({ run }) => run.block),
    row("block", ({ run }) => run.block),
    row("order", ({ run }) => run.order),
    row("kind", () => reading.kind),
    row("unit", () => reading.told_unit ?? reading.unit),
    row("thread", () => reading.thread),
    row("thread_lot", () => reading.thread_lot),
  ].filter((cells) => cells.every((cell) => cell !== ""));
  const tells = ([name = "", ...cells]: string[]) =>
    ["blade", "run", "order"].includes(name) || new Set(cells).size > 1;
  const cuts = new Set(plan.cuttings.flatMap((cutting) => cutting.checkpoint_cuts));
  const checkpoints = [...cuts].sort((a, b) => a - b).map((at) => row(String(at), () => undefined));
  return [
    ...said.filter(tells),
    row("cuts", () => undefined),
    ...checkpoints,
    ...said.filter((cells) => !tells(cells)),
  ];
}
