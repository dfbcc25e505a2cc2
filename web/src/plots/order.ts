// Runs in the order they were cut, each against its edge's typical one: a drift, or a block that lies
// apart, would show.

import * as Plot from "@observablehq/plot";
import { bare, faint, ink, rule, sheet, style } from "./look";
import { type MarkShape, shapesDrawn } from "./mark_shapes";
import { around, axisNumber, logTicks, shortened, wholeTicks } from "./numbers";
import { carryingRuns } from "./runs_marked";
import type { ArmView, JudgementView } from "./view";

interface RunPoint {
  place: number;
  ratio: number;
  label: string;
  shape: MarkShape;
  run: string;
}

function pointsOf(view: JudgementView): RunPoint[] {
  const points = view.arms.flatMap((arm) =>
    arm.runs.flatMap((run): RunPoint[] => {
      const { half_keenness_over_arm: ratio, place } = run.inReport;
      if (ratio === undefined || place === undefined) return [];
      return [{ place, ratio, label: arm.label, shape: arm.shape, run: run.key }];
    }),
  );
  return points.sort((a, b) => a.place - b.place);
}

interface KeyEntry {
  label: string;
  shape: MarkShape;
  x: number;
  y: number;
}

const keyLine = 20;
/** The words over the axis stand above the key. */
const axisLabel = 22;

/** Which mark is which edge, in as many lines as the width needs. */
function keyOf(arms: ArmView[], from: number, to: number): KeyEntry[] {
  const entries: KeyEntry[] = [];
  const known = new Set<string>();
  let x = from;
  let y = axisLabel + 12;
  for (const { label, shape } of arms) {
    if (known.has(label)) continue;
    known.add(label);
    const words = shortened(label, 12);
    const room = 30 + 8 * [...words].length;
    if (x > from && x + room > to) {
      x = from;
      y += keyLine;
    }
    entries.push({ label: words, shape, x, y });
    x += room;
  }
  return entries;
}

function keyDrawn(entries: KeyEntry[]): SVGElement {
  const svg = "http://www.w3.org/2000/svg";
  const group = document.createElementNS(svg, "g");
  for (const { label, shape, x, y } of entries) {
    const mark = shapesDrawn([{ x: x + 3, y, key: "" }], shape, "key-mark");
    mark.firstElementChild?.removeAttribute("data-run");
    const text = document.createElementNS(svg, "text");
    text.setAttribute("x", String(x + 12));
    text.setAttribute("y", String(y));
    text.setAttribute("dy", "0.32em");
    text.setAttribute("text-anchor", "start");
    text.setAttribute("font-weight", "600");
    text.setAttribute("fill", ink);
    text.textContent = label;
    group.append(mark, text);
  }
  return group;
}

function byShapes(points: RunPoint[]): Plot.Markish[] {
  const shapes = [...new Set(points.map(({ shape }) => shape))];
  return shapes.map(
    (shape): Plot.Markish =>
      (_index, { scales }) => {
        const own = points.filter((point) => point.shape === shape);
        const placed = own.map(({ place, ratio, run }) => {
          const x = Number(scales.x?.apply(place));
          return { x, y: Number(scales.y?.apply(ratio)), key: run };
        });
        return shapesDrawn(placed, shape, "runs") as SVGElement;
      },
  );
}

function byNames(points: RunPoint[]): Plot.Markish {
  return Plot.text(points, {
    x: "place",
    y: "ratio",
    text: "label",
    fill: ink,
    fontWeight: 600,
    stroke: sheet,
    strokeWidth: 3,
    ...carryingRuns(points.map(({ run }) => run)),
  });
}

const left = 40;
const right = 12;

export function orderChart(view: JudgementView, width: number): Plot.PlotOptions {
  const points = pointsOf(view);
  const [low, high] = around([...points.map(({ ratio }) => ratio), 1.3, 1 / 1.3]);
  const ticks = logTicks(low, high, 6);
  const first = Math.min(...points.map(({ place }) => place)) - 0.6;
  const last = Math.max(...points.map(({ place }) => place)) + 0.6;
  // Names where they have room; else marks, with a key above.
  const longest = Math.max(...points.map(({ label }) => [...label].length));
  const named = longest <= 2 && points.length * 8 * longest < width - left - right;
  const key = named ? [] : keyOf(view.arms, left, width - right);
  const keyHeight = key.length > 0 ? (key.at(-1)?.y ?? 0) - axisLabel + 12 : 0;
  const shaded = view.blocks
    .filter((_block, place) => place % 2 === 1)
    .map((block) => ({
      from: Math.max(first, block.first - 0.5),
      to: Math.min(last, block.last + 0.5),
    }))
    .filter(({ from, to }) => from < to);
  return {
    width,
    height: 260 + keyHeight,
    marginLeft: left,
    marginRight: right,
    marginTop: 26 + keyHeight,
    marginBottom: 44,
    style,
    x: { type: "linear", domain: [first, last], axis: null },
    y: { type: "log", domain: [low, high], axis: null },
    marks: [
      Plot.rect(shaded, { x1: "from", x2: "to", y1: low, y2: high, fill: faint }),
      Plot.ruleY(ticks, { stroke: rule, strokeWidth: 0.7 }),
      Plot.ruleY([1], { stroke: ink, strokeWidth: 1.2 }),
      Plot.axisY({
        ...bare,
        ticks,
        text: axisNumber,
        label: "run ÷ its edge's typical run",
        labelAnchor: "top",
        labelOffset: 36,
      }),
      Plot.axisX({
        ...bare,
        ticks: wholeTicks(first, last, Math.floor(width / 50)),
        text: axisNumber,
        label: view.orderWords,
        labelAnchor: "right",
        labelOffset: 36,
      }),
      ...(named ? [byNames(points)] : byShapes(points)),
      ...(named ? [] : [() => keyDrawn(key)]),
    ],
  };
}
