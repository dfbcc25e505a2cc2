// The sheet of a trial that is planned: a column for each run in the order of cutting, a row for each
// checkpoint; above them what tells the runs apart, and below what is alike in all, so that only readings
// are typed. Where all are in, it holds another run of each arm.

import type { Plan, PlannedRun, Trial } from "../../wire/api";
import type { Sheet } from "./sheet";

type Recorded = Pick<Trial["recorded"]["runs"][number], "name" | "blade" | "medium">;
type ToCut = Trial["to_cut"][number];
/** A run to be read; further ones have no place in the order. */
type ToRead = Pick<PlannedRun, "arm" | "specimen"> & {
  name: string | number;
  block?: number;
  order?: number;
};

const words = (said: string | number | undefined) => (said === undefined ? "" : String(said));

const mediumOf = (plan: Plan, arm: number) => plan.cuttings[plan.arms[arm]?.cutting ?? 0]?.medium;

function furtherRuns(plan: Plan, runs: readonly Recorded[]): ToRead[] {
  return plan.arms.map(({ blade }, arm) => {
    const medium = mediumOf(plan, arm);
    const named = runs
      .filter((run) => run.blade === blade && run.medium === medium)
      .map(({ name }) => Number(name))
      .filter(Number.isInteger);
    return { arm, name: Math.max(0, ...named) + 1 };
  });
}

/** The runs of the plan that are not in yet, as the program says. */
const left = (plan: Plan, toCut: readonly ToCut[]): ToRead[] =>
  toCut.flatMap(({ planned, name }) => {
    const run = plan.runs[planned];
    return run ? [{ ...run, name }] : [];
  });

/**
 * What is said of some runs only is left out: an empty cell would hold what stands to its left.
 * `runs`: those that are recorded. `further`: all that were planned are.
 */
export function plannedSheet(
  plan: Plan | undefined,
  runs: readonly Recorded[],
  toCut: readonly ToCut[],
): { sheet: Sheet; further: boolean } | undefined {
  if (!plan || plan.runs.length === 0) return undefined;
  const toRead = left(plan, toCut);
  if (toRead.length > 0) return { sheet: sheetOf(plan, toRead), further: false };
  return { sheet: sheetOf(plan, furtherRuns(plan, runs)), further: true };
}

function sheetOf(plan: Plan, toRead: ToRead[]): Sheet {
  const { reading } = plan;
  const runs = toRead.map((run) => {
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
    row("bevel angle per side (deg)", ({ edge }) => edge.bevel_angle_per_side_deg),
    row("apex angle per side (deg)", ({ edge }) => edge.apex_angle_per_side_deg),
    row("finish", ({ edge }) => edge.finish),
    row("thickness behind edge (mm)", ({ edge }) => edge.thickness_behind_edge_mm),
    row("medium", ({ cutting }) => cutting?.medium),
    row("medium condition", ({ cutting }) => cutting?.condition),
    row("medium lot", ({ cutting }) => cutting?.lot),
    row("method", ({ method }) => method.motion ?? method.as_written),
    row("cut length (mm)", ({ method }) => method.cut_length_mm),
    row("edge used (mm)", ({ method }) => method.edge_used_mm),
    row("board", ({ method }) => method.board),
    row("run", ({ run }) => run.name),
    row("block", ({ run }) => run.block),
    row("order", ({ run }) => run.order),
    row("kind", () => reading.kind.replaceAll("_", " ")),
    row("unit", () => reading.told_unit ?? reading.unit),
    row("thread", () => reading.thread),
    row("thread lot", () => reading.thread_lot),
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
