// Which picture belongs to a figure of the page, by the figure's name and what it is of.

import type * as Plot from "@observablehq/plot";
import type { Report } from "../wire/report";
import type { CurveForm } from "./curves";
import { levelChart, mediaChart } from "./lines";
import { orderChart } from "./order";
import { factorPicture, lastingPicture, ratioPicture, startPicture } from "./rows";
import { at, type JudgementView, judgementView, type MediumView, type PairView } from "./view";

export type FigureChart =
  | { kind: "curves"; view: JudgementView; medium: MediumView; form: CurveForm }
  | { kind: "one"; options: (width: number) => Plot.PlotOptions; widest?: number };

/** A figure's data attributes, as the page writes them. */
export interface FigureData {
  figure?: string;
  judgement?: string;
  medium?: string;
  /** "0,3" */
  pairs?: string;
  /** Of curves: banded, plain, or each for banded frames of one edge each. */
  form?: string;
}

function pairsOf(view: JudgementView, pairs: string | undefined): PairView[] {
  return pairs ? pairs.split(",").map((place) => at(view.pairs, Number(place))) : [];
}

/** Throws where the page names a figure that is not known, or one that the report cannot fill. */
export function figureChart(report: Report, figure: FigureData): FigureChart {
  const view = judgementView(report, Number(figure.judgement ?? 0));
  const medium = at(view.media, Number(figure.medium ?? 0));
  const pairs = pairsOf(view, figure.pairs);
  switch (figure.figure) {
    case "curves":
      return {
        kind: "curves",
        view,
        medium,
        form: { frameEach: figure.form === "each", bands: figure.form !== "plain" },
      };
    case "ratios":
      return { kind: "one", options: (width) => ratioPicture(view, pairs, width) };
    case "lasting":
      return { kind: "one", options: (width) => lastingPicture(medium, width) };
    case "starts":
      return { kind: "one", options: (width) => startPicture(view, medium.arms, width) };
    case "factors":
      return { kind: "one", options: (width) => factorPicture(view, width) };
    case "levels": {
      const pair = at(pairs, 0);
      const options = (width: number) => levelChart(view, pair, width);
      return { kind: "one", options, widest: 420 };
    }
    case "media": {
      const columns = view.mediaCompared;
      const options = (width: number) => mediaChart(columns, view.acrossWords, width);
      return { kind: "one", options, widest: 560 };
    }
    case "order":
      return { kind: "one", options: (width) => orderChart(view, width) };
    default:
      throw new Error(`no picture is known by the name ${figure.figure}`);
  }
}
