// The axis of cuts: as far from 0 to 1 as from 1 to 3, and so on, since edges lose most at first.

import * as Plot from "@observablehq/plot";
import { graphite } from "./look";
import { axisNumber, spacedOut } from "./numbers";

const labelPixels = 34;

export interface CutsAxis {
  scale: Plot.ScaleOptions;
  axis: Plot.Markish;
}

/** `checkpoints`: where readings were taken; they are the ticks, as far as there is room. */
export function cutsAxis(
  checkpoints: number[],
  last: number,
  pixels: number,
  counted: string,
): CutsAxis {
  const place = (cuts: number) => (Math.log1p(cuts) / Math.log1p(last)) * pixels;
  const rising = [...new Set(checkpoints)].filter((cuts) => cuts <= last).sort((a, b) => a - b);
  return {
    scale: { type: "symlog", constant: 1, domain: [0, last], axis: null },
    axis: Plot.axisX({
      ticks: spacedOut(rising, place, labelPixels),
      text: axisNumber,
      tickSize: 4,
      label: counted,
      labelAnchor: "right",
      labelArrow: "none",
      labelOffset: 38,
      color: graphite,
    }),
  };
}
