// Rows of intervals on one logarithmic axis: ratios of pairs, cuts of arms, effects of factors.
//
// Short labels have a column at the left, others stand above their line. The number stands beside the
// axis at the right, or on a phone above the line. A filled mark is an answer that holds, an open one
// is not settled.

import * as Plot from "@observablehq/plot";
import { answer, faint, graphite, ink, rule, sheet, signal, style } from "./look";
import { axisNumber, logTicks, shortened } from "./numbers";
import { carryingRuns } from "./runs_marked";

export interface RowDot {
  at: number;
  /**
   * exact: a circle. at_least, at_most: an arrow on from there, or back from there. between: a dash
   * from `at` to `to`. crossed: a cross, for a run that is not used.
   */
  kind: "exact" | "at_least" | "at_most" | "between" | "crossed";
  to?: number;
  run: string;
}

export interface Row {
  label: string;
  /** At the right: "3.2 (2.3 to 4.5)". */
  words: string;
  interval?: { median: number; lo95: number; hi95: number };
  /** A narrower interval drawn inside it as a thicker line. */
  inner?: { lo95: number; hi95: number };
  tone: "settled" | "open" | "plain";
  dots: RowDot[];
}

export interface RowChart {
  rows: Row[];
  axis: string;
  /** A band in which a difference is too small to act on. */
  margin?: number;
  /** A line to compare with: 1 for ratios. */
  line?: number;
  width: number;
}

/** In pixels: numbers above the line need more. */
const rowHeights = { beside: 46, above: 54 };
/** From so many pixels on, numbers have a column of their own. */
const roomForColumn = 480;
const characterWidth = 7.6;
/** Of a label, which is bold. */
const boldWidth = 8.6;
/** Up to this share of the width, labels have a column of their own. */
const roomForLabels = 0.2;
const toneColour = { settled: answer, open: signal, plain: ink };

/** The axis reaches past everything drawn, and past the margin's band where there is one. */
function domainOf(chart: RowChart): [number, number] {
  const values = chart.rows.flatMap((row) => [
    ...(row.interval ? [row.interval.lo95, row.interval.hi95, row.interval.median] : []),
    ...(row.inner ? [row.inner.lo95, row.inner.hi95] : []),
    ...row.dots.flatMap((dot) => (dot.to === undefined ? [dot.at] : [dot.at, dot.to])),
  ]);
  if (chart.margin) values.push(chart.margin * 1.15, 1 / (chart.margin * 1.15));
  const positive = values.filter((value) => value > 0);
  if (positive.length === 0) return [1, 10];
  return [Math.min(...positive) / 1.06, Math.max(...positive) * 1.06];
}

interface Placed {
  row: Row;
  y: number;
}

function intervalMarks(placed: Placed[]): Plot.Markish[] {
  const drawn = placed.filter(({ row }) => row.interval);
  const colour = ({ row }: Placed) => toneColour[row.tone];
  return [
    Plot.ruleY(drawn, {
      y: "y",
      x1: ({ row }: Placed) => row.interval?.lo95,
      x2: ({ row }: Placed) => row.interval?.hi95,
      stroke: colour,
      strokeWidth: 2.5,
      strokeLinecap: "round",
    }),
    Plot.ruleY(
      placed.filter(({ row }) => row.inner),
      {
        y: "y",
        x1: ({ row }: Placed) => row.inner?.lo95,
        x2: ({ row }: Placed) => row.inner?.hi95,
        stroke: colour,
        strokeWidth: 6,
        strokeLinecap: "round",
      },
    ),
    Plot.dot(drawn, {
      y: "y",
      x: ({ row }: Placed) => row.interval?.median,
      r: 6,
      stroke: colour,
      strokeWidth: 2.5,
      fill: ({ row }: Placed) => (row.tone === "open" ? sheet : toneColour[row.tone]),
    }),
  ];
}

function runMarks(placed: Placed[]): Plot.Markish[] {
  const dots = placed.flatMap(({ row, y }) =>
    row.dots.map((dot, place) => ({
      ...dot,
      // One below the other in the order given, so that runs of one value do not hide each other.
      y: y + 0.1 + (0.2 * (place + 1)) / (row.dots.length + 1),
    })),
  );
  const of = (kind: RowDot["kind"]) => dots.filter((dot) => dot.kind === kind);
  const runs = (chosen: typeof dots) => carryingRuns(chosen.map((dot) => dot.run));
  const symbols = (kind: RowDot["kind"], symbol: "circle" | "times", options: Plot.DotOptions) =>
    Plot.dot(of(kind), { x: "at", y: "y", symbol, r: 3, ...options, ...runs(of(kind)) });
  const arrows = (kind: RowDot["kind"], arrow: string, textAnchor: "start" | "end") =>
    Plot.text(of(kind), {
      x: "at",
      y: "y",
      text: () => arrow,
      textAnchor,
      fill: graphite,
      ...runs(of(kind)),
    });
  return [
    Plot.ruleY(of("between"), {
      y: "y",
      x1: "at",
      x2: "to",
      stroke: graphite,
      strokeWidth: 2,
      ...runs(of("between")),
    }),
    symbols("exact", "circle", { stroke: graphite, fill: graphite, fillOpacity: 0.35 }),
    symbols("crossed", "times", { stroke: signal }),
    arrows("at_least", "→", "start"),
    arrows("at_most", "←", "end"),
  ];
}

export function rowChart(chart: RowChart): Plot.PlotOptions {
  const domain = domainOf(chart);
  const placed = chart.rows.map((row, place) => ({ row, y: place + 0.62 }));
  const count = chart.rows.length;
  const column = chart.width >= roomForColumn;
  const rowHeight = column ? rowHeights.beside : rowHeights.above;
  const longest = Math.max(0, ...chart.rows.map(({ words }) => words.length));
  const marginRight = column ? 28 + Math.ceil(longest * characterWidth) : 14;
  const longestLabel = Math.max(0, ...chart.rows.map(({ label }) => label.length));
  const labelled = Math.ceil(longestLabel * boldWidth) + 14;
  const beside = column && labelled <= chart.width * roomForLabels;
  const marginLeft = beside ? 14 + labelled : 14;
  const ticks = logTicks(
    domain[0],
    domain[1],
    Math.max(3, Math.floor((chart.width - marginLeft - marginRight) / 58)),
  );
  const characters = Math.floor(chart.width / boldWidth);
  const labels = placed.map(({ row, y }) => ({
    label: shortened(
      row.label,
      Math.max(8, characters - (column ? marginRight / boldWidth : row.words.length + 3)),
    ),
    words: row.words,
    y: beside ? y : y - 17 / rowHeight,
    wordsY: column ? y : y - 17 / rowHeight,
  }));
  const edge = { frameAnchor: "left" as const, textAnchor: "start" as const };
  return {
    width: chart.width,
    height: count * rowHeight + 54,
    marginLeft,
    marginRight,
    marginTop: 8,
    marginBottom: 46,
    style,
    x: { type: "log", domain, axis: null },
    y: { domain: [0, count], range: [8, count * rowHeight + 8], axis: null },
    marks: [
      ...(chart.margin
        ? [
            Plot.rect([0], {
              x1: 1 / chart.margin,
              x2: chart.margin,
              y1: 0,
              y2: count,
              fill: faint,
            }),
          ]
        : []),
      Plot.ruleX(ticks, { stroke: rule, strokeWidth: 0.7 }),
      ...(chart.line ? [Plot.ruleX([chart.line], { stroke: ink, strokeWidth: 1.2 })] : []),
      Plot.axisX({
        anchor: "bottom",
        ticks,
        text: axisNumber,
        tickSize: 0,
        label: chart.axis,
        labelAnchor: "right",
        labelArrow: "none",
        labelOffset: 40,
        color: graphite,
      }),
      ...runMarks(placed),
      ...intervalMarks(placed),
      Plot.text(labels, {
        ...edge,
        dx: 14 - marginLeft,
        y: "y",
        text: "label",
        fill: ink,
        fontWeight: 600,
        stroke: sheet,
        strokeWidth: 4,
      }),
      Plot.text(labels, {
        frameAnchor: "right",
        textAnchor: "end",
        dx: marginRight - 14,
        y: "wordsY",
        text: "words",
        fill: ink,
        stroke: sheet,
        strokeWidth: 4,
      }),
    ],
  };
}
