// From options to the picture itself, in a form that screen readers and any browser can use.

import * as Plot from "@observablehq/plot";

export interface Named {
  /** The id of what names the picture, and of its text equivalent. */
  labelledBy: string;
  describedBy: string;
}

/** What pictures of a figure share: how they are called, and what is done to each once drawn. */
export interface Drawing {
  named: Named;
  /** Called with every picture, also with one that is drawn anew in another width. */
  finish: (picture: Element) => void;
}

const narrowest = 260;

/** As wide as there is room, in pixels, but never so narrow that nothing can be read. */
export function pictureWidth(room: number, widest: number): number {
  return Math.max(narrowest, Math.min(widest, Math.floor(room)));
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

/** Draws into `place`, in place of what was drawn there before. */
export function drawInto(place: Element, options: Plot.PlotOptions, drawing: Drawing): void {
  place.replaceChildren(drawn(options, drawing.named));
  drawing.finish(place);
}
