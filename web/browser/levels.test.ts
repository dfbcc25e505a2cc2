// Numbers of reports whose edges were cut to different lengths and compared elsewhere than at half
// keenness: every place that says one of them says the same.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { at } from "../src/plots/view";
import type { Report } from "../src/wire/report";
import { examples, keenfall, type Opened, open, scratch, startBrowser } from "./opened";
import { says } from "./said";

const files = scratch();
let browser: Browser;

beforeAll(async () => {
  browser = await startBrowser();
});

afterAll(async () => {
  await browser?.close();
  files.gone();
});

async function told(name: string, ...words: string[]): Promise<Opened & { report: Report }> {
  const out = files.file(`${name}.html`);
  keenfall("tell", ...words, "--quiet", `--out=${out}`);
  const opened = await open(browser, out);
  const report: Report = await opened.page.evaluate(() =>
    JSON.parse(document.getElementById("report-data")?.textContent ?? ""),
  );
  return { ...opened, report };
}

const rowsOf = (page: Page, figure: string, medium: number, judgement = 0) =>
  page.$$eval(
    `figure[data-figure=${figure}][data-judgement="${judgement}"][data-medium="${medium}"] tbody tr`,
    (rows) =>
      rows.map((row) => [...row.querySelectorAll("th,td")].map((cell) => cell.textContent ?? "")),
  );

describe("milling tools run for unequal times, compared at one wear", () => {
  let page: Page;
  let judged: Report["judgements"][number];

  beforeAll(async () => {
    const opened = await told(
      "milling",
      ...[examples("milling/milling_flank_wear.csv"), "--column=blade=condition"],
      ...["--column=medium=material", "--column=run=insert_set", "--column=cuts=time_min"],
      ...["--column=reading=vb_mm", "--define-kind=flank_wear:mm:lower:zero=below:0.01"],
      ...["--kind=flank_wear", "--stop-reading=0.3mm"],
    );
    page = opened.page;
    judged = at(opened.report.judgements, 0);
  }, 60_000);

  test("every reading of a curve stands in the row of its cuts", async () => {
    const { judgement, media } = judged;
    const lengths = new Set(judgement.arms.map(({ longest_run_cuts }) => longest_run_cuts));
    expect(lengths.size).toBeGreaterThan(2);
    for (const [place, { arms }] of media.entries()) {
      const rows = await rowsOf(page, "curves", place);
      const cuts = [
        ...new Set(arms.flatMap((arm) => at(judgement.arms, arm).curve.map((p) => p.cuts))),
      ];
      cuts.sort((a, b) => a - b);
      expect(rows.length).toBe(cuts.length);
      for (const [row, cells] of rows.entries()) {
        says(cells[0], [at(cuts, row)]);
        for (const [column, arm] of arms.entries()) {
          const point = at(judgement.arms, arm).curve.find((p) => p.cuts === cuts[row]);
          if (point) says(cells[column + 1], [point.median, point.lo95, point.hi95]);
          else expect(cells[column + 1]).toBe("");
        }
      }
    }
  });

  test("what the slider reads off is of those cuts", async () => {
    const { judgement, media } = judged;
    const figure = page.locator("figure[data-figure=curves]").first();
    await figure.locator("input[type=range]").focus();
    await page.keyboard.press("Home");
    for (let step = 0; step < 40; step++) {
      const text = (await figure.locator(".read-off").textContent()) ?? "";
      const cuts = /At ([\d.]+)/.exec(text)?.[1] ?? "";
      const parts = text.split(": ").slice(1).join(": ").split(";");
      for (const [place, arm] of at(media, 0).arms.entries()) {
        const said = (parts[place] ?? "").replace(at(judged.names, arm).name, "");
        const point = at(judgement.arms, arm).curve.find(
          (p) => Number(p.cuts.toPrecision(3)) === Number(cuts),
        );
        if (point) says(said, [point.median, point.lo95, point.hi95]);
        else expect(said).toContain("not carried so far");
      }
      await page.keyboard.press("ArrowRight");
    }
  });
});
