// Blunting curves: every run thin, each blade bold with its band, readings as dots, struck ones
// crossed, events marked, what lies beyond the last cut shaded, the common reading drawn.

import * as Plot from "@observablehq/plot";
import { cutsAxis } from "./cuts_axis";
import { movedApart } from "./end_labels";
import { answer, faint, graphite, ink, mostInOneFrame, rule, sheet, signal, style } from "./look";
import { axisNumber, logTicks, shortened } from "./numbers";
import { carryingRuns } from "./runs_marked";
import type { ArmView, Judgement, MediumView, RunView } from "./view";

export interface CurveChart {
  judgement: Judgement;
  /** Where the edges are compared. */
  where: MediumView["at"];
  /** Whose curves are drawn in full. */
  arms: ArmView[];
  /** The axes hold these too, so that frames beside each other share them. */
  allArms: ArmView[];
  width: number;
  height: number;
}

interface Point {
  cuts: number;
  reading: number;
  run: RunView;
}

interface Frame {
  low: number;
  high: number;
  lastCut: number;
  lastDrawn: number;
}

const readingsOf = (run: RunView) =>
  run.recorded.readings.filter(({ series }) => run.inReport.series.includes(series));

function frameOf(arms: ArmView[]): Frame {
  const curves = arms.flatMap(({ arm }) => arm.curve);
  const read = arms.flatMap(({ runs }) => runs.flatMap(readingsOf));
  const heights = [
    ...curves.filter((point) => !point.beyond_what_was_cut).flatMap((p) => [p.lo95, p.hi95]),
    ...curves.map((point) => point.median),
    ...read.map(({ reading }) => reading),
  ].filter((reading) => reading > 0);
  const lastCut = Math.max(1, ...read.map(({ cuts }) => cuts));
  return {
    low: heights.length > 0 ? Math.min(...heights) / 1.04 : 1,
    high: heights.length > 0 ? Math.max(...heights) * 1.04 : 10,
    lastCut,
    lastDrawn: Math.max(lastCut * 1.02, ...curves.map(({ cuts }) => cuts)),
  };
}

/** One path of dots for each run: thousands of circles would be slow to draw and to open. */
function scattered(points: Point[], className: string, cross: boolean): Plot.Markish {
  return (_index, scales) => {
    const document = globalThis.document;
    const group = document.createElementNS("http://www.w3.org/2000/svg", "g");
    group.setAttribute("class", className);
    const paths = new Map<string, string>();
    for (const { cuts, reading, run } of points) {
      const x = Number(scales.scales.x?.apply?.(cuts) ?? scales.x?.(cuts));
      const y = Number(scales.scales.y?.apply?.(reading) ?? scales.y?.(reading));
      const here = cross
        ? `M${(x - 3.5).toFixed(1)},${(y - 3.5).toFixed(1)}l7,7m0,-7l-7,7`
        : `M${x.toFixed(1)},${y.toFixed(1)}h0`;
      paths.set(run.key, (paths.get(run.key) ?? "") + here);
    }
    for (const [key, d] of paths) {
      const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
      path.setAttribute("d", d);
      path.setAttribute("data-run", key);
      group.append(path);
    }
    return group;
  };
}

function runMarks(arms: ArmView[], frame: Frame): Plot.Markish[] {
  const runs = arms.flatMap((arm) => arm.runs);
  const raised = (reading: number) => Math.max(reading, frame.low);
  const through = runs.flatMap((run): Point[] =>
    run.inReport.checkpoints.map(({ cuts, reading }) => ({ cuts, reading: raised(reading), run })),
  );
  const read = (struck: boolean) =>
    runs.flatMap((run): Point[] =>
      readingsOf(run)
        .filter((reading) => (reading.struck !== undefined) === struck)
        .map(({ cuts, reading }) => ({ cuts, reading: raised(reading), run })),
    );
  const events = runs.flatMap((run) => run.recorded.events.map((event) => ({ ...event, run })));
  return [
    scattered(read(false), "dots", false),
    ...[false, true].map((used) => {
      const points = through.filter(({ run }) => !run.judged.not_used_because === used);
      return Plot.line(points, {
        x: "cuts",
        y: "reading",
        z: ({ run }: Point) => run.key,
        stroke: graphite,
        strokeWidth: 0.8,
        strokeOpacity: 0.45,
        strokeDasharray: used ? "none" : "1 3",
        ...carryingRuns(points.map(({ run }) => run.key)),
      });
    }),
    scattered(read(true), "struck", true),
    Plot.dot(events, {
      x: "cuts",
      y: () => frame.low,
      symbol: "triangle",
      r: 4,
      dy: -5,
      fill: signal,
      title: (event: { words: string }) => event.words,
      ...carryingRuns(events.map(({ run }) => run.key)),
    }),
  ];
}

function bladeMarks(arm: ArmView, band: boolean): Plot.Markish[] {
  const cut = arm.arm.curve.filter((point) => !point.beyond_what_was_cut);
  const beyond = arm.arm.curve.slice(Math.max(0, cut.length - 1));
  const line = { x: "cuts", y: "median", stroke: ink, curve: "monotone-x" as const };
  return [
    ...(band
      ? [
          Plot.areaY(cut, {
            x: "cuts",
            y1: "lo95",
            y2: "hi95",
            fill: ink,
            fillOpacity: 0.1,
            curve: "monotone-x",
          }),
        ]
      : []),
    Plot.line(beyond, {
      ...line,
      strokeWidth: 1.4,
      strokeDasharray: arm.dashes || "none",
      strokeOpacity: 0.5,
    }),
    Plot.line(cut, {
      ...line,
      strokeWidth: 3,
      strokeDasharray: arm.dashes || "none",
      strokeLinecap: "round",
    }),
  ];
}

/** The reading at which an edge counts as having got to where it is compared. */
function readingThere(judgement: Judgement, where: MediumView["at"], start: number): number {
  if (where.what === "common_reading") return where.reading;
  const level = where.what === "test" ? 2 : where.level;
  return judgement.kind.keener_when === "lower" ? start * level : start / level;
}

/** Where each edge gets to the level at which it is compared; none beyond what was cut. */
function levelReached(judgement: Judgement, where: MediumView["at"], arm: ArmView): Plot.Markish[] {
  const { lasting } = arm;
  const start = arm.arm.start_reading;
  if (!lasting || !start || lasting.beyond_what_was_cut) return [];
  const reading = readingThere(judgement, where, start.median);
  return [
    Plot.ruleY([lasting], { x1: "lo95", x2: "hi95", y: reading, stroke: answer, strokeWidth: 2 }),
    Plot.dot([lasting], {
      x: "median",
      y: reading,
      r: 5,
      fill: sheet,
      stroke: answer,
      strokeWidth: 2.5,
    }),
  ];
}

const margins = { top: 26, bottom: 48, left: 50 };

export function curveChart(chart: CurveChart): Plot.PlotOptions {
  const { judgement, where, arms, width, height } = chart;
  const frame = frameOf(chart.allArms);
  const named = arms.length > 1;
  const longest = Math.max(0, ...arms.map(({ label }) => [...label].length));
  const right = named ? Math.min(110, 14 + Math.min(longest, 12) * 8) : 14;
  const across = width - margins.left - right;
  const checkpoints = chart.allArms.flatMap(({ runs }) =>
    runs.flatMap((run) => run.inReport.checkpoints.map(({ cuts }) => cuts)),
  );
  const cuts = cutsAxis(checkpoints, frame.lastDrawn, across, judgement.counted);
  const inside = height - margins.top - margins.bottom;
  const pixels = (reading: number) =>
    (Math.log(frame.high / reading) / Math.log(frame.high / frame.low)) * inside;
  const reading = (y: number) => frame.high * (frame.low / frame.high) ** (y / inside);
  const ends = arms.flatMap(({ label, arm }) => {
    const last = arm.curve.at(-1);
    return last ? [{ text: shortened(label, 12), y: pixels(last.median) }] : [];
  });
  const common = where.what === "common_reading" ? where.reading : undefined;
  const beyondPixels = across * (1 - Math.log1p(frame.lastCut) / Math.log1p(frame.lastDrawn));
  const ticks = logTicks(frame.low, frame.high, Math.max(4, Math.floor(inside / 42)));
  return {
    width,
    height,
    marginTop: margins.top,
    marginBottom: margins.bottom,
    marginLeft: margins.left,
    marginRight: right,
    style,
    x: cuts.scale,
    y: { type: "log", domain: [frame.low, frame.high], axis: null },
    marks: [
      Plot.rect([frame], {
        x1: "lastCut",
        x2: "lastDrawn",
        y1: "low",
        y2: "high",
        fill: faint,
      }),
      ...(beyondPixels > 60
        ? [
            Plot.text([frame], {
              x: "lastCut",
              frameAnchor: "top",
              textAnchor: "start",
              dx: 5,
              dy: 5,
              text: () => "beyond what\nwas cut",
              fill: graphite,
              fontSize: 12,
            }),
          ]
        : []),
      Plot.ruleY(ticks, { stroke: rule, strokeWidth: 0.7 }),
      Plot.axisY({
        ticks,
        tickFormat: axisNumber,
        tickSize: 0,
        label: `${judgement.kind.words}, ${judgement.kind.unit}`,
        labelAnchor: "top",
        labelArrow: "none",
        labelOffset: 46,
        color: graphite,
      }),
      cuts.axis,
      ...(common
        ? [Plot.ruleY([common], { stroke: answer, strokeWidth: 1.6, strokeDasharray: "2 4" })]
        : []),
      ...runMarks(arms, frame),
      ...arms.flatMap((arm) => bladeMarks(arm, arms.length <= 4)),
      ...arms.flatMap((arm) => levelReached(judgement, where, arm)),
      ...(named
        ? [
            Plot.text(movedApart(ends, 15), {
              x: () => frame.lastDrawn,
              y: ({ y }: { y: number }) => reading(y),
              text: "text",
              dx: 7,
              textAnchor: "start",
              fill: ink,
              fontWeight: 700,
            }),
          ]
        : []),
    ],
  };
}

export interface FramedChart {
  heading?: string;
  options: Plot.PlotOptions;
}

/** All arms of a medium in one frame where they can be told apart, else a frame for each. */
export function curvePictures(
  judgement: Judgement,
  medium: MediumView,
  width: number,
): FramedChart[] {
  const arms = medium.arms.filter(({ arm }) => arm.curve.length > 0);
  const where = medium.at;
  if (arms.length <= mostInOneFrame) {
    const height = Math.round(Math.min(460, Math.max(320, width * 0.6)));
    return [{ options: curveChart({ judgement, where, arms, allArms: arms, width, height }) }];
  }
  const columns = Math.max(1, Math.floor((width + 16) / 300));
  const each = Math.floor((width - 16 * (columns - 1)) / columns);
  return arms.map((arm) => ({
    heading: arm.name,
    options: curveChart({ judgement, where, arms: [arm], allArms: arms, width: each, height: 240 }),
  }));
}
