// Every picture against a stored drawing, and what must hold for all of them.

import { describe, expect, test } from "vitest";
import { curvePictures } from "../src/plots/curves";
import { drawn } from "../src/plots/drawn";
import { levelChart, mediaChart } from "../src/plots/lines";
import { orderChart } from "../src/plots/order";
import { factorPicture, lastingPicture, ratioPicture, startPicture } from "../src/plots/rows";
import { at, judgementView } from "../src/plots/view";
import { type Made, madeReport } from "./made_report";

const view = (made?: Made) => judgementView(madeReport(made), 0);
const width = 640;
const oneFrame = { frameEach: false, bands: true };

function curves(made?: Made) {
  const shown = view(made);
  const form = { frameEach: shown.arms.length > 6, bands: true };
  return curvePictures(shown.judgement, at(shown.media, 0), form, width).map(({ options }) =>
    drawn(options),
  );
}

/** Two factors of two levels each, one settled. */
function withFactors(made?: Made) {
  const shown = view(made);
  const bounds = { lo90: 1.1, hi90: 1.9, lo95: 1.04, hi95: 2 };
  const ratio = { median: 1.496, ...bounds };
  const effects = ["finish: 1 µm against 9 µm", "blade: B against A"].map((words, place) => ({
    effect: { factor: place, level: 1, ratio, simultaneous: bounds, verdict: "longer" as const },
    told: { words, ratio_words: "1.496", interval_words: "1.04 to 2.0", settled: place === 0 },
  }));
  return { ...shown, effects };
}

const pictures = {
  curves: (made?: Made) => at(curves(made), 0),
  ratios: (made?: Made) => drawn(ratioPicture(view(made), view(made).pairs, width)),
  lasting: (made?: Made) => drawn(lastingPicture(at(view(made).media, 0), width)),
  starts: (made?: Made) => drawn(startPicture(view(made), view(made).arms, width)),
  levels: (made?: Made) => drawn(levelChart(view(made), at(view(made).pairs, 0), width)),
  media: (made?: Made) => {
    const shown = view({ media: ["new matting", "uplifted matting"], ...made });
    return drawn(mediaChart(shown.media, shown.acrossWords, width));
  },
  order: (made?: Made) => drawn(orderChart(view(made), width)),
  factors: (made?: Made) => drawn(factorPicture(withFactors(made), width)),
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
    const svg = drawn(
      at(curvePictures(shown.judgement, at(shown.media, 0), oneFrame, width), 0).options,
    );
    const moves = (selector: string) =>
      (svg.querySelector(`${selector} [data-run="0:0"]`)?.getAttribute("d") ?? "").match(/M/g);

    expect(moves(".struck")).toHaveLength(1);
    expect(moves(".dots")).toHaveLength(6);
  });
});

test("an interval longer than the curve ends at the edge of the picture, in an arrow", () => {
  const report = madeReport({ runsEach: 1 });
  const { lasting } = at(at(report.judgements, 0).names, 0);
  if (lasting) lasting.hi95 = 344;
  const shown = judgementView(report, 0);
  const svg = drawn(
    at(curvePictures(shown.judgement, at(shown.media, 0), oneFrame, width), 0).options,
  );

  const ends = [...svg.querySelectorAll("line[x2]")].map((line) => Number(line.getAttribute("x2")));
  expect(Math.max(...ends)).toBeLessThanOrEqual(width);
  expect(svg.querySelectorAll(".goes-on text")).toHaveLength(1);
});

/** Texts of a picture, in the order they are drawn. */
const textsOf = (svg: SVGElement | HTMLElement) =>
  [...svg.querySelectorAll("text")].map((text) => text.textContent ?? "");

test("every tick of a logarithmic axis has its number", () => {
  for (const picture of [pictures.starts(), pictures.lasting(), pictures.levels()]) {
    expect(textsOf(picture)).not.toContain("");
  }
});

describe("edges told apart", () => {
  const long = ["the trimming knife from the shed", "the trimming knife from the van"];

  test("by their own mark and dashes, readings and runs as well as curves", () => {
    const svg = at(curves(), 0);
    const groups = [...svg.querySelectorAll(".dots")];
    const shapes = groups.map((group) => {
      const [first] = (group.querySelector("path")?.getAttribute("d") ?? "").split("M").slice(1);
      return `${group.getAttribute("class")} ${first?.replace(/^[^a-z]*/, "")}`;
    });
    const dashesOf = (key: string) =>
      [...svg.querySelectorAll(`path[data-run="${key}"]`)]
        .map((path) => path.closest("[stroke-dasharray]")?.getAttribute("stroke-dasharray"))
        .find((dashes) => dashes !== undefined);

    expect(new Set(shapes).size).toBe(2);
    expect(dashesOf("0:0")).toBeUndefined();
    expect(dashesOf("0:3")).toBe("10 5");
    expect(svg.querySelectorAll(".end-labels .key-mark")).toHaveLength(2);
  });

  test("by numbers in the picture of ratios, where their names are long", () => {
    const report = madeReport({ blades: long });
    at(report.judgements, 0).names.forEach((name, place) => {
      name.label = String(place + 1);
    });
    const shown = judgementView(report, 0);

    expect(textsOf(drawn(ratioPicture(shown, shown.pairs, 304)))).toContain("2 over 1");
    const starts = textsOf(drawn(startPicture(shown, shown.arms, 304)));
    expect(starts.filter((text) => /^[12]: the trimming/.test(text))).toHaveLength(2);
  });

  test("by marks with a key in the order of cutting, where letters have no room", () => {
    const few = drawn(orderChart(view({ runsEach: 3 }), width));
    const many = drawn(orderChart(view({ runsEach: 100 }), width));

    expect(few.querySelectorAll("text[data-run]")).toHaveLength(6);
    expect(many.querySelectorAll("text[data-run]")).toHaveLength(0);
    expect(many.querySelectorAll(".runs [data-run]")).toHaveLength(200);
    expect(many.querySelectorAll(".key-mark")).toHaveLength(2);
    expect(textsOf(few)).toEqual(expect.arrayContaining(["1", "2", "3", "4", "5", "6"]));
    expect(textsOf(few).join(" ")).not.toMatch(/1\.5|2\.5/);
  });
});

describe("where edges are compared", () => {
  const two = ["rope", "board"];

  /** Board is compared at 400 gf, rope at half keenness; all lasting there is three times as long. */
  function atTwoLevels() {
    const report = madeReport({ media: two, runsEach: 1 });
    const judged = at(report.judgements, 0);
    const board = at(judged.media, 1);
    board.at = { what: "common_reading", reading: 400, unit: "gf" };
    board.lasting_words = "cuts to reach 400 gf";
    for (const arm of board.arms) {
      const { lasting } = at(judged.names, arm);
      if (!lasting) throw new Error("made with how long edges last");
      lasting.median *= 3;
      lasting.lo95 *= 3;
      lasting.hi95 *= 3;
      const run = judged.judgement.runs.findIndex((each) => each.arm === arm);
      at(judged.runs, run).lasting = { known: "exactly", cuts: lasting.median, words: "" };
    }
    return judgementView(report, 0);
  }
  const shown = atTwoLevels();
  const texts = (svg: SVGElement | HTMLElement) =>
    [...svg.querySelectorAll("text")].map((text) => text.textContent ?? "");
  const curvesOf = (medium: number) =>
    drawn(at(curvePictures(shown.judgement, at(shown.media, medium), oneFrame, width), 0).options);
  /** Places across of an edge's typical dot and of its run's, in the picture of how long they last. */
  const across = (circle: Element | undefined) => Number(circle?.getAttribute("cx"));

  test("is each medium's own: only the second is drawn at a common reading", () => {
    expect(curvesOf(0).outerHTML).not.toContain('stroke-dasharray="2 4"');
    expect(curvesOf(1).outerHTML).toContain('stroke-dasharray="2 4"');
    expect(texts(drawn(lastingPicture(at(shown.media, 0), width)))).toContain(
      "cuts to half keenness",
    );
    expect(texts(drawn(lastingPicture(at(shown.media, 1), width)))).toContain(
      "cuts to reach 400 gf",
    );
  });

  test("has a ring for each edge, at a common reading too", () => {
    for (const medium of [0, 1]) {
      expect(curvesOf(medium).querySelectorAll("circle[r='5']")).toHaveLength(2);
    }
  });

  test("is where runs stand, below their edge", () => {
    const svg = drawn(lastingPicture(at(shown.media, 1), width));
    const edges = [...svg.querySelectorAll("circle[r='6']")];
    const runs = [...svg.querySelectorAll("circle[r='3']")];

    expect(edges).toHaveLength(2);
    expect(across(edges[0])).toBeGreaterThan(0);
    expect(runs.map(across)).toEqual(edges.map(across));
  });
});
