// Blunting curves: every run thin, each blade bold with its band, readings as small marks, struck
// ones crossed, events marked, what lies beyond the last cut shaded, the common reading drawn.

import * as Plot from "@observablehq/plot";
import {
  bladeMarks,
  commonReading,
  eventMarks,
  levelReached,
  readingsOf,
  runMarks,
} from "./curve_marks";
import { cutsAxis } from "./cuts_axis";
import { endLabels, labelRoom } from "./end_labels";
import { faint, graphite, rule, style } from "./look";
import { axisNumber, logTicks, shortened } from "./numbers";
import type { ArmView, Judgement, MediumView } from "./view";

export interface CurveChart {
  judgement: Judgement;
  /** Where the edges are compared. */
  where: MediumView["at"];
  /** Whose curves are drawn in full. */
  arms: ArmView[];
  /** The axes hold these too, so that frames beside each other share them. */
  allArms: ArmView[];
  /** Whether the curves have their 95 % bands. */
  bands: boolean;
  width: number;
  height: number;
}

interface Frame {
  low: number;
  high: number;
  lastCut: number;
  lastDrawn: number;
}

function frameOf(arms: ArmView[]): Frame {
  const curves = arms.flatMap(({ arm }) => arm.curve);
  const read = arms.flatMap(({ runs }) => runs.flatMap(readingsOf));
  const heights = [
    ...curves.filter((point) => !point.beyond_what_was_cut).flatMap((p) => [p.lo95, p.hi95]),
    ...curves.map((point) => point.median),
    ...read.map(({ reading }) => reading),
  ].filter((reading) => reading > 0);
  const last = [...curves, ...read].map(({ cuts }) => cuts);
  return {
    low: heights.length > 0 ? Math.min(...heights) / 1.04 : 1,
    high: heights.length > 0 ? Math.max(...heights) * 1.04 : 10,
    lastCut: Math.max(...arms.map(({ arm }) => arm.longest_run_cuts)),
    lastDrawn: Math.max(1, ...last),
  };
}

/** Shaded where no edge was cut so far, named where there is room; at the side curves leave free. */
function beyondMarks(frame: Frame, pixels: number, rises: boolean): Plot.Markish[] {
  if (frame.lastDrawn <= frame.lastCut) return [];
  const shade = Plot.rect([frame], {
    x1: "lastCut",
    x2: "lastDrawn",
    y1: "low",
    y2: "high",
    fill: faint,
    className: "beyond",
  });
  const words = Plot.text([frame], {
    x: "lastCut",
    frameAnchor: rises ? "bottom" : "top",
    lineAnchor: rises ? "bottom" : "top",
    textAnchor: "start",
    dx: 5,
    dy: rises ? -14 : 5,
    text: () => "beyond what\nwas cut",
    fill: graphite,
    stroke: faint,
    strokeWidth: 3,
    fontSize: 12,
  });
  return pixels > 84 ? [shade, words] : [shade];
}

const margins = { top: 26, bottom: 48, left: 50 };

export function curveChart(chart: CurveChart): Plot.PlotOptions {
  const { judgement, where, arms, width, height } = chart;
  const frame = frameOf(chart.allArms);
  const names =
    arms.length > 1 ? arms.map((arm) => ({ ...arm, text: shortened(arm.label, 12) })) : [];
  const right = names.length > 0 ? labelRoom(names) : 14;
  const across = width - margins.left - right;
  const checkpoints = chart.allArms.flatMap(({ runs }) =>
    runs.flatMap((run) => run.inReport.checkpoints.map(({ cuts }) => cuts)),
  );
  const cuts = cutsAxis(checkpoints, frame.lastDrawn, across, judgement.counted);
  const inside = height - margins.top - margins.bottom;
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
      ...beyondMarks(frame, beyondPixels, judgement.kind.keener_when === "lower"),
      Plot.ruleY(ticks, { stroke: rule, strokeWidth: 0.7 }),
      Plot.axisY({
        ticks,
        text: axisNumber,
        tickSize: 0,
        label: `${judgement.kind.words}, ${judgement.kind.unit}`,
        labelAnchor: "top",
        labelArrow: "none",
        labelOffset: 46,
        color: graphite,
      }),
      cuts.axis,
      ...commonReading(where),
      ...runMarks(arms, frame.low),
      ...arms.flatMap((arm) => bladeMarks(arm, chart.bands)),
      eventMarks(arms, frame.low),
      ...arms.flatMap((arm) => levelReached(arm, frame.lastDrawn)),
      (_index, { scales }) => {
        const ends = names.flatMap(({ text, shape, arm }) => {
          const last = arm.curve.at(-1);
          if (!last) return [];
          const endX = Number(scales.x?.apply(last.cuts));
          return [{ text, shape, endX, endY: Number(scales.y?.apply(last.median)) }];
        });
        return endLabels(ends, width - right);
      },
    ],
  };
}

export interface FramedChart {
  heading?: string;
  options: Plot.PlotOptions;
}

/** How the page wants the curves of a medium; its caption says the same. */
export interface CurveForm {
  /** A frame for each edge, since there are more than can be told apart in one. */
  frameEach: boolean;
  bands: boolean;
}

export function curvePictures(
  judgement: Judgement,
  medium: MediumView,
  form: CurveForm,
  width: number,
): FramedChart[] {
  const arms = medium.arms.filter(({ arm }) => arm.curve.length > 0);
  const shared = { judgement, where: medium.at, allArms: arms, bands: form.bands };
  if (!form.frameEach) {
    const height = Math.round(Math.min(460, Math.max(320, width * 0.6)));
    return [{ options: curveChart({ ...shared, arms, width, height }) }];
  }
  const columns = Math.max(1, Math.floor((width + 16) / 300));
  const each = Math.floor((width - 16 * (columns - 1)) / columns);
  return arms.map((arm) => ({
    heading: arm.name,
    options: curveChart({ ...shared, arms: [arm], width: each, height: 240 }),
  }));
}
