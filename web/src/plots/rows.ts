// What stands in the rows of each picture of intervals.

import type * as Plot from "@observablehq/plot";
import { type Row, type RowDot, rowChart } from "./row_chart";
import type { ArmView, JudgementView, MediumView, PairView, RunView } from "./view";

/** How much longer one of two edges lasts, with the band that is too small to act on. */
export function ratioPicture(
  view: JudgementView,
  pairs: PairView[],
  width: number,
): Plot.PlotOptions {
  const rows = pairs.map(
    ({ a, b, compared, told }): Row => ({
      label: `${a.label} over ${b.label}`,
      words: `${told.ratio_words} (${told.interval_words})`,
      interval: { median: compared.ratio.median, ...compared.simultaneous },
      inner: compared.ratio,
      tone: told.settled ? "settled" : "open",
      dots: [],
    }),
  );
  const axis = "times as long";
  return rowChart({ rows, axis, margin: view.judgement.worth_it_margin, line: 1, width });
}

/** Nothing of a run that tells nothing, or that took no cuts: those have no place on a log axis. */
function lastingDot({ inReport, key: run }: RunView): RowDot[] {
  const { known, cuts, to_cuts: to } = inReport.lasting ?? {};
  if (!known || known === "none" || cuts === undefined) return [];
  if (known === "between") return [{ at: cuts, to, kind: known, run }];
  return [{ at: cuts, kind: known === "exactly" ? "exact" : known, run }];
}

/** Cuts until each edge has come to where they are compared, above them every run by itself. */
export function lastingPicture(medium: MediumView, width: number): Plot.PlotOptions {
  const rows = medium.arms.map(
    (arm): Row => ({
      label: arm.keyedName,
      words: arm.lasting?.words ?? "",
      interval: arm.lasting,
      tone: "plain",
      dots: arm.runs.flatMap(lastingDot),
    }),
  );
  return rowChart({ rows, axis: medium.lastingWords, width });
}

/** The reading that every run started from. */
export function startPicture(
  view: JudgementView,
  arms: ArmView[],
  width: number,
): Plot.PlotOptions {
  const rows = arms.map((arm): Row => {
    const start = arm.arm.start_reading;
    return {
      label: arm.keyedName,
      words: arm.startWords ?? "",
      interval: start,
      tone: "plain",
      dots: arm.runs.flatMap((run): RowDot[] => {
        const first = run.inReport.checkpoints[0];
        if (!first || first.cuts > 0 || first.reading <= 0) return [];
        const kind = run.judged.not_used_because ? "crossed" : "exact";
        return [{ at: first.reading, kind, run: run.key }];
      }),
    };
  });
  return rowChart({ rows, axis: view.startsWords, width });
}

/** What each level of a factor does against the factor's first. */
export function factorPicture(view: JudgementView, width: number): Plot.PlotOptions {
  const rows = view.effects.map(
    ({ effect, told }): Row => ({
      label: told.words,
      words: `${told.ratio_words} (${told.interval_words})`,
      interval: { median: effect.ratio.median, ...effect.simultaneous },
      inner: effect.ratio,
      tone: told.settled ? "settled" : "open",
      dots: [],
    }),
  );
  const axis = "times as long";
  return rowChart({ rows, axis, margin: view.judgement.worth_it_margin, line: 1, width });
}
