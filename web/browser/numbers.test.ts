// Every number that the demo's report says, in its sentences and in the tables behind its pictures,
// is a number of its JSON, rounded.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { at } from "../src/plots/view";
import type { Report } from "../src/wire/report";
import { keenfall, open, scratch, startBrowser } from "./opened";
import { says, saysOnly, written } from "./said";

const files = scratch();
let browser: Browser;
let page: Page;
let report: Report;
let told: Report["judgements"][number];

beforeAll(async () => {
  browser = await startBrowser();
  keenfall("demo", "--quiet", `--out=${files.file("demo.html")}`);
  ({ page } = await open(browser, files.file("demo.html")));
  report = await page.evaluate(() =>
    JSON.parse(document.getElementById("report-data")?.textContent ?? ""),
  );
  told = at(report.judgements, 0);
});

afterAll(async () => {
  await browser?.close();
  files.gone();
});

interface Interval {
  median: number;
  lo90: number;
  hi90: number;
  lo95: number;
  hi95: number;
}

const numbersOf = ({ median, lo90, hi90, lo95, hi95 }: Interval) => [
  median,
  lo90,
  hi90,
  lo95,
  hi95,
];
const inPercent = (numbers: number[]) => numbers.map((number) => 100 * number);

const cellsOf = (selector: string) =>
  page.$$eval(selector, (rows) =>
    rows.map((row) => [...row.querySelectorAll("th,td")].map((cell) => cell.textContent ?? "")),
  );
const rowsOf = (figure: string, more = "") =>
  cellsOf(`figure[data-figure=${figure}]${more} tbody tr`);
const textsOf = (selector: string) => page.locator(selector).allTextContents();

/** What an edge lasts: cuts, and metres of the medium. */
function lasts(arm: number): number[] {
  const { half_keenness_cuts: cuts, method } = at(told.judgement.arms, arm);
  if (!cuts) throw new Error("the demo's edges are all read");
  const metres = (method.cut_length_mm ?? Number.NaN) / 1000;
  return numbersOf(cuts).flatMap((number) => [number, number * metres]);
}

test("the sentence of each comparison", async () => {
  const { judgement, media, comparisons } = told;
  const sentences = await textsOf("#answer p.answer");
  const pairs = media.flatMap((medium) => medium.comparisons);
  expect(sentences.length).toBeGreaterThan(pairs.length);
  pairs.forEach((index, place) => {
    const pair = at(judgement.comparisons, index);
    const { a, b } = at(comparisons, index);
    const sentence = at(sentences, place);
    expect(written(sentence).length).toBeGreaterThan(3);
    saysOnly(sentence, [
      ...[90, 95, judgement.worth_it_margin, pair.simultaneous.comparisons - 1],
      ...(pair.further_runs_each === undefined ? [] : [Number(pair.further_runs_each)]),
      ...numbersOf(pair.ratio),
      ...[pair.simultaneous.lo90, pair.simultaneous.hi90],
      ...[pair.simultaneous.lo95, pair.simultaneous.hi95],
      ...lasts(a),
      ...lasts(b),
    ]);
  });
});

test("the sentences across media", async () => {
  const across = told.judgement.media_compared;
  if (!across) throw new Error("the demo has two media");
  const pair = at(across.pairs, 0);
  const all = [
    ...[90, 95, across.blades.length, 5],
    ...inPercent(numbersOf(pair.spread_ratio)),
    ...inPercent([pair.probability_same_order]),
    ...numbersOf(pair.lasting_ratio),
    ...numbersOf(pair.lasting_ratio).map((number) => 1 / number),
    ...across.interactions.flatMap(({ ratio, simultaneous }) => [
      ratio.median,
      simultaneous.lo95,
      simultaneous.hi95,
    ]),
    ...inPercent(across.media.map((medium) => medium.order_probability)),
  ];
  const answers = (await textsOf("#answer p.answer")).slice(told.judgement.comparisons.length);
  const items = await textsOf("#pictures h3:text-is('Across media') ~ ul > li");
  expect(answers.length).toBeGreaterThan(0);
  expect(items.length).toBe(1 + across.interactions.length + across.media.length);
  for (const sentence of [...answers, ...items]) {
    expect(sentence).toMatch(/\d/);
    saysOnly(sentence, all);
  }
});

test("the ratios", async () => {
  const { judgement, comparisons, names, media } = told;
  for (const [place, medium] of media.entries()) {
    const rows = await rowsOf("ratios", `[data-medium="${place}"]`);
    expect(rows.length).toBe(medium.comparisons.length);
    for (const [row, index] of medium.comparisons.entries()) {
      const pair = at(judgement.comparisons, index);
      const cells = at(rows, row);
      const { a, b } = at(comparisons, index);
      expect(cells[0]).toBe(`${at(names, a).name} over ${at(names, b).name}`);
      says(cells[1], [pair.ratio.median]);
      says(cells[2], [pair.simultaneous.lo95, pair.simultaneous.hi95]);
      says(cells[3], [pair.simultaneous.lo90, pair.simultaneous.hi90]);
      says(cells[4], [pair.ratio.lo95, pair.ratio.hi95]);
      const chance = (text: string | undefined, probability: number) =>
        probability > 0.99 || probability < 0.01
          ? expect(text).toBe(probability > 0.5 ? "over 99 %" : "under 1 %")
          : says(text, [100 * probability]);
      chance(cells[5], pair.probability_longer);
      chance(cells[6], pair.probability_worth_having);
      expect(cells[7]).toBe(pair.verdict);
    }
  }
});

test("the curves, the edges and their starts", async () => {
  const { judgement, names, media } = told;
  for (const [place, medium] of media.entries()) {
    const here = `[data-medium="${place}"]`;
    const lasting = await rowsOf("lasting", here);
    const curves = await rowsOf("curves", here);
    const starts = await rowsOf("starts", here);
    for (const [row, index] of medium.arms.entries()) {
      const arm = at(judgement.arms, index);
      const lasts = at(names, index).lasting;
      const start = arm.start_reading;
      if (!lasts || !start) throw new Error("the demo's edges are all read");
      expect(lasting[row]?.[0]).toBe(at(names, index).name);
      expect(lasting[row]?.[1]).toBe(lasts.words);
      says(lasting[row]?.[2], [lasts.lo95, lasts.hi95]);
      says(lasting[row]?.[3], inPercent([Math.expm1(arm.run_scatter_log_sd.median)]));
      says(lasting[row]?.[4], [arm.runs]);
      says(starts[row]?.[1], [start.median]);
      says(starts[row]?.[2], [start.lo95, start.hi95]);
      for (const { cuts, median, lo95, hi95 } of arm.curve) {
        const here = curves.find((cells) => Number(cells[0]) === Number(cuts.toPrecision(3)));
        says(here?.[row + 1], [median, lo95, hi95]);
      }
    }
  }
});

test("the ratios by level", async () => {
  const figures = page.locator("figure[data-figure=levels]");
  const count = await figures.count();
  expect(count).toBeGreaterThan(0);
  for (let place = 0; place < count; place++) {
    const index = Number(await figures.nth(place).getAttribute("data-pairs"));
    const rows = await rowsOf("levels", `[data-pairs="${index}"]`);
    const levels = at(told.judgement.comparisons, index).ratio_by_level;
    expect(rows.length).toBe(levels.length);
    levels.forEach(({ level, median, lo95, hi95 }, row) => {
      expect(rows[row]?.[0]).toMatch(new RegExp(`^${String(level).replace(".", "\\.")}\\b`));
      says(rows[row]?.[1], [median]);
      says(rows[row]?.[2], [lo95, hi95]);
    });
  }
});

test("the media side by side", async () => {
  const across = told.judgement.media_compared;
  const rows = await rowsOf("media");
  expect(rows.length).toBe(across?.blades.length);
  rows.forEach((cells, blade) => {
    expect(cells[0]).toBe(at(across?.blades ?? [], blade).blade);
    across?.media.forEach((medium, place) => {
      const arm = at(medium.arms, blade);
      expect(cells[place + 1]).toBe(at(told.names, arm).lasting?.words);
    });
  });
});

test("the runs, and the order they were cut in", async () => {
  const { judgement } = told;
  const runs = await cellsOf("tr[data-run]");
  expect(runs.length).toBe(judgement.runs.length);
  for (const [place, run] of judgement.runs.entries()) {
    const cells = at(runs, place);
    expect(cells[0]).toBe(run.name);
    if (run.start_reading) says(cells[5], [run.start_reading.median]);
    if (run.half_keenness_cuts && !run.stopped_before_half_keenness) {
      says(cells[6], [run.half_keenness_cuts.median]);
    }
    says(cells[7], [run.last_cuts]);
    const recorded = at(report.trial.runs, at(told.runs, place).run).readings.length;
    if (run.not_used_because) expect(cells[8]).toBe(`${recorded}, none used`);
    else says(cells[8], [run.readings_used]);
  }
  const ordered = await rowsOf("order");
  expect(ordered.length).toBeGreaterThan(30);
  for (const cells of ordered) {
    const place = judgement.runs.findIndex(({ order }) => String(order) === cells[0]);
    expect(cells[1]).toBe(at(judgement.runs, place).name);
    says(cells[5], [at(told.runs, place).half_keenness_over_arm ?? Number.NaN]);
  }
});
