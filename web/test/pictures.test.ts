// Every picture against a stored drawing, and what must hold for all of them.

import { describe, expect, test } from "vitest";
import { curvePictures } from "../src/plots/curves";
import { drawn } from "../src/plots/drawn";
import { levelChart, mediaChart, orderChart } from "../src/plots/lines";
import { lastingPicture, ratioPicture, startPicture } from "../src/plots/rows";
import { at, judgementView } from "../src/plots/view";
import { type Made, madeReport } from "./made_report";

const view = (made?: Made) => judgementView(madeReport(made), 0);
const width = 640;

function curves(made?: Made) {
  const shown = view(made);
  return curvePictures(shown.judgement, at(shown.media, 0), width).map(({ options }) =>
    drawn(options),
  );
}

const pictures = {
  curves: (made?: Made) => at(curves(made), 0),
  ratios: (made?: Made) => drawn(ratioPicture(view(made), view(made).pairs, width)),
  lasting: (made?: Made) => drawn(lastingPicture(view(made), view(made).arms, width)),
  starts: (made?: Made) => drawn(startPicture(view(made), view(made).arms, width)),
  levels: (made?: Made) => drawn(levelChart(view(made).judgement, at(view(made).pairs, 0), width)),
  media: (made?: Made) => {
    const shown = view({ media: ["new matting", "uplifted matting"], ...made });
    return drawn(mediaChart(shown.media, shown.lastingWords, width));
  },
  order: (made?: Made) => drawn(orderChart(view(made).arms, width)),
};

describe.each(Object.entries(pictures))("the picture of %s", (_name, picture) => {
  test("is drawn as it was", () => {
    expect(picture().outerHTML).toMatchSnapshot();
  });

  test("is one image to a screen reader, without names that no role may carry", () => {
    const svg = picture();

    expect(svg.getAttribute("role")).toBe("img");
    expect(svg.querySelectorAll("[aria-label]")).toHaveLength(0);
  });

  test("draws no number that is none", () => {
    for (const made of [
      {},
      { runsEach: 1 },
      { blades: ["a blade with a name longer than anybody would write", "B"] },
      { halfKeenness: 5000 },
      { checkpoints: [0, 1] },
    ]) {
      expect(picture(made).outerHTML).not.toMatch(/NaN|Infinity|undefined/);
    }
  });
});

describe("blunting curves", () => {
  test("of more edges than can be told apart get a frame each, on the same axes", () => {
    const blades = Array.from({ length: 24 }, (_, place) => `blade ${place + 1}`);
    const frames = curves({ blades });

    expect(frames).toHaveLength(24);
    const ticks = frames.map((frame) =>
      [...frame.querySelectorAll("text")].map((text) => text.textContent).join(" "),
    );
    expect(new Set(ticks).size).toBe(1);
  });

  test("carry each run's key on its line and on its dots", () => {
    const svg = at(curves(), 0);

    for (const key of ["0:0", "0:5"]) {
      expect(svg.querySelectorAll(`[data-run="${key}"]`).length).toBeGreaterThanOrEqual(2);
    }
  });

  test("cross out what was struck, and draw no dot for it", () => {
    const report = madeReport({ runsEach: 1 });
    const reading = at(at(report.trial.runs, 0).readings, 2);
    reading.struck = "hit a staple";
    const shown = judgementView(report, 0);
    const svg = drawn(at(curvePictures(shown.judgement, at(shown.media, 0), width), 0).options);
    const moves = (selector: string) =>
      (svg.querySelector(`${selector} [data-run="0:0"]`)?.getAttribute("d") ?? "").match(/M/g);

    expect(moves(".struck")).toHaveLength(1);
    expect(moves(".dots")).toHaveLength(6);
  });
});
