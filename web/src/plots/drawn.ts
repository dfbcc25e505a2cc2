// From options to the picture itself, in a form that screen readers and any browser can use.

import * as Plot from "@observablehq/plot";

export interface Named {
  /** The id of what names the picture, and of its text equivalent. */
  labelledBy: string;
  describedBy: string;
}

/**
 * Draws the options. The whole picture is one image with a name and a description; the labels that
 * the library gives to its inner groups are taken off, since no role there may carry them.
 */
export function drawn(options: Plot.PlotOptions, named?: Named): SVGSVGElement | HTMLElement {
  const picture = Plot.plot(options);
  const svg = picture instanceof SVGSVGElement ? picture : picture.querySelector("svg");
  if (svg) {
    for (const group of svg.querySelectorAll("[aria-label]")) group.removeAttribute("aria-label");
    svg.setAttribute("role", "img");
    if (named) {
      svg.setAttribute("aria-labelledby", named.labelledBy);
      svg.setAttribute("aria-describedby", named.describedBy);
    }
  }
  return picture as SVGSVGElement | HTMLElement;
}
