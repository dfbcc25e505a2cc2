// The pictures of lines besides the blunting curves: a ratio at every level, blades from medium to
// medium, and runs in the order they were cut.

import * as Plot from "@observablehq/plot";
import { movedApart } from "./end_labels";
import { faint, graphite, ink, rule, sheet, style } from "./look";
import { axisNumber, logTicks, shortened } from "./numbers";
import { carryingRuns } from "./runs_marked";
import type { ArmView, Judgement, MediumColumn, PairView } from "./view";

const bare = { labelArrow: "none" as const, tickSize: 0, color: graphite };

/** From a little below the least to a little above the greatest of positive numbers. */
function around(values: number[]): [number, number] {
  const positive = values.filter((value) => value > 0);
  if (positive.length === 0) return [0.5, 2];
  const low = Math.min(...positive);
  const high = Math.max(...positive);
  const room = low === high ? 1.3 : 1.06;
  return [low / room, high * room];
}

/** How the ratio of one pair changes with the level it is taken at (times the start reading). */
export function levelChart(judgement: Judgement, pair: PairView, width: number): Plot.PlotOptions {
  const points = pair.compared.ratio_by_level;
  const margin = judgement.worth_it_margin;
  const [low, high] = around([
    ...points.flatMap(({ lo95, hi95 }) => [lo95, hi95]),
    margin * 1.1,
    1 / margin,
  ]);
  const ticks = logTicks(low, high, 6);
  const lower = judgement.kind.keener_when === "lower";
  return {
    width,
    height: 230,
    marginLeft: 40,
    marginRight: 14,
    marginBottom: 44,
    style,
    x: { type: "log", axis: null },
    y: { type: "log", domain: [low, high], axis: null },
    marks: [
      Plot.rect([0], {
        x1: points[0]?.level,
        x2: points.at(-1)?.level,
        y1: Math.max(low, 1 / margin),
        y2: margin,
        fill: faint,
      }),
      Plot.ruleY(ticks, { stroke: rule, strokeWidth: 0.7 }),
      Plot.ruleY([1], { stroke: ink, strokeWidth: 1.2 }),
      Plot.axisY({ ...bare, ticks, tickFormat: axisNumber, label: "times as long" }),
      Plot.axisX({
        ...bare,
        ticks: points.map(({ level }) => level),
        tickFormat: (level: number) => `${lower ? "" : "÷ "}${axisNumber(level)}`,
        label: lower ? "reading, times its start" : "reading, its start divided",
        labelAnchor: "right",
        labelOffset: 36,
      }),
      Plot.areaY(points, { x: "level", y1: "lo95", y2: "hi95", fill: ink, fillOpacity: 0.12 }),
      Plot.line(points, { x: "level", y: "median", stroke: ink, strokeWidth: 2 }),
      Plot.dot(points, {
        x: "level",
        y: "median",
        r: 4,
        stroke: ink,
        strokeWidth: 1.5,
        fill: (point: { beyond_what_was_cut: boolean }) =>
          point.beyond_what_was_cut ? sheet : ink,
      }),
    ],
  };
}

/** Each blade from medium to medium: whether they keep their order and their distance. */
export function mediaChart(columns: MediumColumn[], axis: string, width: number): Plot.PlotOptions {
  const points = columns.flatMap(({ arms }, column) =>
    arms.flatMap((arm, blade) => (arm.lasting ? [{ column, blade, arm, ...arm.lasting }] : [])),
  );
  const [low, high] = around(points.flatMap(({ lo95, hi95 }) => [lo95, hi95]));
  const height = 360;
  const inside = height - 24 - 44;
  const pixels = (cuts: number) => (Math.log(high / cuts) / Math.log(high / low)) * inside;
  const cuts = (y: number) => high * (low / high) ** (y / inside);
  const ticks = logTicks(low, high, 7);
  const blades = columns[0]?.arms ?? [];
  // Blades stand a little apart, so that their intervals do not cover each other.
  const aside = (blade: number) =>
    blades.length < 2
      ? 0
      : ((blade / (blades.length - 1)) * 2 - 1) * Math.min(0.12, 0.03 * blades.length);
  const place = ({ column, blade }: { column: number; blade: number }) => column + aside(blade);
  const last = points.filter(({ column }) => column === columns.length - 1);
  const ends = movedApart(
    last.map(({ arm, median }) => ({ text: shortened(arm.label, 12), y: pixels(median) })),
    15,
  );
  const longest = Math.max(1, ...ends.map(({ text }) => [...text].length));
  const names = Math.floor((width - 80) / columns.length / 7.5);
  return {
    width,
    height,
    marginTop: 24,
    marginLeft: 46,
    marginRight: 16 + 8 * longest,
    marginBottom: 44,
    style,
    x: { type: "linear", domain: [-0.35, columns.length - 0.65], axis: null },
    y: { type: "log", domain: [low, high], axis: null },
    marks: [
      Plot.ruleY(ticks, { stroke: rule, strokeWidth: 0.7 }),
      Plot.axisY({
        ...bare,
        ticks,
        tickFormat: axisNumber,
        label: axis,
        labelAnchor: "top",
        labelOffset: 42,
      }),
      Plot.text(columns, {
        x: (_column: MediumColumn, index: number) => index,
        frameAnchor: "bottom",
        dy: 22,
        text: ({ words }: MediumColumn) => shortened(words, Math.max(6, names)),
        fill: ink,
        fontWeight: 600,
      } as Plot.TextOptions),
      ...blades.map((arm, blade) =>
        Plot.line(
          points.filter((point) => point.blade === blade),
          {
            x: place,
            y: "median",
            stroke: ink,
            strokeWidth: 2,
            strokeDasharray: arm.dashes || "none",
          },
        ),
      ),
      Plot.ruleX(points, { x: place, y1: "lo95", y2: "hi95", stroke: ink, strokeWidth: 1.6 }),
      Plot.dot(points, { x: place, y: "median", r: 4.5, fill: ink, stroke: sheet }),
      Plot.text(ends, {
        x: () => columns.length - 1 + (aside(blades.length - 1) || 0),
        y: ({ y }: { y: number }) => cuts(y),
        text: "text",
        dx: 10,
        textAnchor: "start",
        fill: ink,
        fontWeight: 700,
      }),
    ],
  };
}

/** Every run against its edge's typical one, in the order of cutting: drift would show. */
export function orderChart(arms: ArmView[], width: number): Plot.PlotOptions {
  const points = arms.flatMap((arm) =>
    arm.runs.flatMap((run) => {
      const ratio = run.inReport.half_keenness_over_arm;
      const { order, block } = run.judged;
      return ratio === undefined || order === undefined
        ? []
        : [{ order, ratio, block: block ?? "", label: shortened(arm.label, 3), run: run.key }];
    }),
  );
  points.sort((a, b) => a.order - b.order);
  const [low, high] = around([...points.map(({ ratio }) => ratio), 1.3, 1 / 1.3]);
  const ticks = logTicks(low, high, 6);
  const blocks = [...new Set(points.map(({ block }) => block))].map((block) => {
    const orders = points.filter((point) => point.block === block).map(({ order }) => order);
    return { block, from: Math.min(...orders) - 0.5, to: Math.max(...orders) + 0.5 };
  });
  // Blocks cut one after the other are shaded by turns; blocks that were mixed are not.
  const apart = blocks.every(
    ({ from }, index) => index === 0 || from >= (blocks[index - 1]?.to ?? 0),
  );
  const shaded = apart ? blocks.filter((_, index) => index % 2 === 1) : [];
  return {
    width,
    height: 260,
    marginLeft: 40,
    marginRight: 12,
    marginTop: 26,
    marginBottom: 44,
    style,
    x: { type: "linear", axis: null, inset: 8 },
    y: { type: "log", domain: [low, high], axis: null },
    marks: [
      Plot.rect(shaded, { x1: "from", x2: "to", y1: low, y2: high, fill: faint }),
      Plot.ruleY(ticks, { stroke: rule, strokeWidth: 0.7 }),
      Plot.ruleY([1], { stroke: ink, strokeWidth: 1.2 }),
      Plot.axisY({
        ...bare,
        ticks,
        tickFormat: axisNumber,
        label: "run ÷ its edge's typical run",
        labelAnchor: "top",
        labelOffset: 36,
      }),
      Plot.axisX({
        ...bare,
        ticks: Math.min(points.length, Math.floor(width / 50)),
        tickFormat: axisNumber,
        label: "order of cutting",
        labelAnchor: "right",
        labelOffset: 36,
      }),
      Plot.text(points, {
        x: "order",
        y: "ratio",
        text: "label",
        fill: ink,
        fontWeight: 600,
        stroke: sheet,
        strokeWidth: 3,
        ...carryingRuns(points.map(({ run }) => run)),
      }),
    ],
  };
}
