// The pictures of lines besides the blunting curves: a ratio at every level, and blades from medium
// to medium.

import * as Plot from "@observablehq/plot";
import { endLabels, labelRoom } from "./end_labels";
import { answer, bare, faint, ink, rule, sheet, style } from "./look";
import { around, axisNumber, logTicks, shortened } from "./numbers";
import { at, type JudgementView, type MediumColumn, type PairView } from "./view";

/** The stretch of levels that the two edges are compared at, as far as the points go. */
function comparedStretch(pair: PairView): { from: number; to: number } | undefined {
  const levels = pair.compared.ratio_by_level.map(({ level }) => level);
  const compared = pair.told.levels_compared;
  if (!compared || levels.length === 0) return undefined;
  const from = Math.max(Math.min(...compared), Math.min(...levels));
  const to = Math.min(Math.max(...compared), Math.max(...levels));
  return from <= to ? { from, to } : undefined;
}

/** How the ratio of one pair changes with the level it is taken at (times the start reading). */
export function levelChart(view: JudgementView, pair: PairView, width: number): Plot.PlotOptions {
  const points = pair.compared.ratio_by_level.map((point, place) => ({
    ...point,
    words: at(pair.told.level_words, place),
  }));
  const margin = view.judgement.worth_it_margin;
  const [low, high] = around([
    ...points.flatMap(({ lo95, hi95 }) => [lo95, hi95]),
    margin * 1.1,
    1 / margin,
  ]);
  const ticks = logTicks(low, high, 6);
  const stretch = comparedStretch(pair);
  return {
    width,
    height: 230,
    marginLeft: 40,
    marginRight: 14,
    marginTop: 26,
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
      Plot.axisY({
        ...bare,
        ticks,
        text: axisNumber,
        label: "times as long",
        labelAnchor: "top",
        labelOffset: 36,
      }),
      Plot.axisX({
        ...bare,
        ticks: points.map(({ level }) => level),
        text: (tick: number) => points.find(({ level }) => level === tick)?.words ?? "",
        label: view.levelsWords,
        labelAnchor: "right",
        labelOffset: 36,
      }),
      ...(stretch
        ? [
            Plot.rect([stretch], {
              x1: "from",
              x2: "to",
              y1: low,
              y2: high,
              inset: -0.8,
              fill: answer,
              fillOpacity: stretch.from === stretch.to ? 0.8 : 0.16,
              className: "compared",
            }),
          ]
        : []),
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
  const ticks = logTicks(low, high, 7);
  const blades = columns[0]?.arms ?? [];
  // Blades stand a little apart, so that their intervals do not cover each other.
  const aside = (blade: number) =>
    blades.length < 2
      ? 0
      : ((blade / (blades.length - 1)) * 2 - 1) * Math.min(0.12, 0.03 * blades.length);
  const place = ({ column, blade }: { column: number; blade: number }) => column + aside(blade);
  const ends = points
    .filter(({ column }) => column === columns.length - 1)
    .map((point) => ({ ...point, text: shortened(point.arm.label, 12) }));
  const right = labelRoom(ends);
  const names = Math.floor((width - 46 - right) / columns.length / 7.5);
  return {
    width,
    height,
    marginTop: 24,
    marginLeft: 46,
    marginRight: right,
    marginBottom: 44,
    style,
    x: { type: "linear", domain: [-0.35, columns.length - 0.65], axis: null },
    y: { type: "log", domain: [low, high], axis: null },
    marks: [
      Plot.ruleY(ticks, { stroke: rule, strokeWidth: 0.7 }),
      Plot.axisY({
        ...bare,
        ticks,
        text: axisNumber,
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
      (_index, { scales }) => {
        const placed = ends.map(({ text, column, blade, median }) => ({
          text,
          endX: Number(scales.x?.apply(place({ column, blade }))) + 7,
          endY: Number(scales.y?.apply(median)),
        }));
        return endLabels(placed, width - right);
      },
    ],
  };
}
