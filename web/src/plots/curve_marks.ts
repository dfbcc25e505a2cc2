// What is drawn into a frame of blunting curves: each run thin with its readings, each blade bold
// with its band, events, and where an edge got to the level that is compared.

import * as Plot from "@observablehq/plot";
import { answer, graphite, ink, sheet, signal } from "./look";
import { type MarkedPoint, type MarkShape, shapesDrawn } from "./mark_shapes";
import { carryingRuns } from "./runs_marked";
import type { ArmView, MediumView, RunView } from "./view";

interface Reading {
  cuts: number;
  reading: number;
  run: RunView;
}

const cross: MarkShape = { path: "m-3.5,-3.5l7,7m0,-7l-7,7", filled: false };

/** Readings of what is judged: not those of another kind that the run was read by, too. */
export const readingsOf = (run: RunView) =>
  run.recorded.readings.filter(({ series }) => run.inReport.series.includes(series));

/** `aside`: so many pixels to the right, so that edges' readings at one checkpoint lie apart. */
function scattered(
  readings: Reading[],
  shape: MarkShape,
  className: string,
  aside: number,
): Plot.Markish {
  return (_index, { scales }) => {
    const points = readings.map(({ cuts, reading, run }): MarkedPoint => {
      const x = Number(scales.x?.apply(cuts)) + aside;
      return { x, y: Number(scales.y?.apply(reading)), key: run.key };
    });
    return shapesDrawn(points, shape, className) as SVGElement;
  };
}

/** `low`: the lowest reading of the axis, for readings of zero. */
export function runMarks(arms: ArmView[], low: number): Plot.Markish[] {
  const raised = (reading: number) => Math.max(reading, low);
  const apart = Math.min(5, 12 / arms.length);
  return arms.flatMap((arm, place): Plot.Markish[] => {
    const aside = apart * (place - (arms.length - 1) / 2);
    const through = arm.runs.flatMap((run): Reading[] =>
      run.inReport.checkpoints.map(({ cuts, reading }) => ({
        cuts,
        reading: raised(reading),
        run,
      })),
    );
    const read = (struck: boolean) =>
      arm.runs.flatMap((run): Reading[] =>
        readingsOf(run)
          .filter((reading) => (reading.struck !== undefined) === struck)
          .map(({ cuts, reading }) => ({ cuts, reading: raised(reading), run })),
      );
    return [
      scattered(read(false), arm.shape, "dots", aside),
      Plot.line(through, {
        x: "cuts",
        y: "reading",
        z: ({ run }: Reading) => run.key,
        stroke: graphite,
        strokeWidth: 0.9,
        strokeOpacity: ({ run }: Reading) => (run.judged.not_used_because ? 0.22 : 0.55),
        strokeDasharray: arm.dashes || "none",
        ...carryingRuns(through.map(({ run }) => run.key)),
      }),
      scattered(read(true), cross, "struck", aside),
    ];
  });
}

export function eventMarks(arms: ArmView[], low: number): Plot.Markish {
  const events = arms.flatMap(({ runs }) =>
    runs.flatMap((run) => run.recorded.events.map((event) => ({ ...event, run }))),
  );
  return Plot.dot(events, {
    x: "cuts",
    y: () => low,
    symbol: "triangle",
    r: 4,
    dy: -5,
    fill: signal,
    className: "events",
    title: (event: { words: string }) => event.words,
    ...carryingRuns(events.map(({ run }) => run.key)),
  });
}

export function bladeMarks(arm: ArmView, band: boolean): Plot.Markish[] {
  const cut = arm.arm.curve.filter((point) => !point.beyond_what_was_cut);
  const beyond = arm.arm.curve.slice(Math.max(0, cut.length - 1));
  const line = { x: "cuts", y: "median", stroke: ink, curve: "monotone-x" as const };
  const strokeDasharray = arm.dashes || "none";
  const bounds = { x: "cuts", y1: "lo95", y2: "hi95", curve: "monotone-x" as const };
  return [
    ...(band ? [Plot.areaY(cut, { ...bounds, fill: ink, fillOpacity: 0.08 })] : []),
    Plot.line(beyond, { ...line, strokeWidth: 1.4, strokeDasharray, strokeOpacity: 0.5 }),
    Plot.line(cut, { ...line, strokeWidth: 3, strokeDasharray, strokeLinecap: "round" }),
  ];
}

/**
 * Where each edge gets to the level at which it is compared; none beyond what was cut. An interval
 * that goes on beyond what is drawn ends there in an arrow.
 */
export function levelReached(arm: ArmView, lastDrawn: number): Plot.Markish[] {
  const { lasting } = arm;
  if (lasting?.reading === undefined || lasting.beyond_what_was_cut) return [];
  const y = lasting.reading;
  const goesOn = lasting.hi95 > lastDrawn;
  const to = goesOn ? lastDrawn : lasting.hi95;
  const arrow = Plot.text([lasting], {
    x: lastDrawn,
    y,
    text: () => "▶",
    textAnchor: "end",
    dx: 2,
    fontSize: 12,
    fill: answer,
    className: "goes-on",
  });
  return [
    Plot.ruleY([lasting], { x1: "lo95", x2: () => to, y, stroke: answer, strokeWidth: 2 }),
    ...(goesOn ? [arrow] : []),
    Plot.dot([lasting], {
      x: "median",
      y,
      r: 5,
      fill: sheet,
      stroke: answer,
      strokeWidth: 2.5,
      className: "ring",
    }),
  ];
}

/** The reading at which edges are compared, where it is one for all. */
export function commonReading(where: MediumView["at"]): Plot.Markish[] {
  if (where.what !== "common_reading") return [];
  const line = { stroke: answer, strokeWidth: 1.6, strokeDasharray: "2 4" };
  return [Plot.ruleY([where.reading], line)];
}
