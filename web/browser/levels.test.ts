// Numbers of reports whose edges were cut to different lengths and compared elsewhere than at half
// keenness: every place that says one of them says the same.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { at } from "../src/plots/view";
import type { Report } from "../src/wire/report";
import { examples, keenfall, type Opened, open, scratch, startBrowser, writeTable } from "./opened";
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
        const said = (parts[place] ?? "").replace(at(judged.names, arm).label, "");
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

/** What the page says in its list of each of the judgement's runs: how long it lasted. */
async function lastedInTheList(page: Page, judgement: number): Promise<string[]> {
  const rows = await page.$$eval(`tr[data-run^="${judgement}:"]`, (list) =>
    list.map((row) => {
      const heads = [...(row.closest("table")?.querySelectorAll("thead th") ?? [])];
      const column = heads.findIndex((head) =>
        /failed|to (half|reach|fall)/.test(head.textContent),
      );
      const run = Number((row as HTMLElement).dataset.run?.split(":")[1]);
      return { run, lasted: row.children[column]?.textContent ?? "" };
    }),
  );
  return rows.sort((a, b) => a.run - b.run).map(({ lasted }) => lasted);
}

/** Numbers of one judgement's lasting figures, their runs and its run list agree with the JSON. */
async function agrees(page: Page, judged: Report["judgements"][number], judgement: number) {
  for (const [place, medium] of judged.media.entries()) {
    const figure = page.locator(
      `figure[data-figure=lasting][data-judgement="${judgement}"][data-medium="${place}"]`,
    );
    const caption = (await figure.locator("figcaption").textContent()) ?? "";
    expect(caption.toLowerCase()).toContain(medium.lasting_words.toLowerCase());
    const rows = await rowsOf(page, "lasting", place, judgement);
    expect(rows.length).toBe(medium.arms.length);
    for (const [row, arm] of medium.arms.entries()) {
      const lasts = at(judged.names, arm).lasting;
      expect(rows[row]?.[1]).toBe(lasts?.words);
      says(rows[row]?.[2], [lasts?.lo95 ?? Number.NaN, lasts?.hi95 ?? Number.NaN]);
    }
  }
  expect(await lastedInTheList(page, judgement)).toEqual(
    judged.runs.map(({ lasting }) => lasting?.words ?? ""),
  );
}

/** An edge stands in the middle of its runs on a log scale, where they got that far. */
function expectEdgesAmongTheirRuns(judged: Report["judgements"][number]) {
  for (const [arm, { lasting }] of judged.names.entries()) {
    const runs = judged.runs.filter((_run, place) => at(judged.judgement.runs, place).arm === arm);
    const exact = runs.flatMap((run) =>
      run.lasting?.known === "exactly" ? [run.lasting.cuts ?? Number.NaN] : [],
    );
    if (exact.length < runs.length || exact.length < 3 || !lasting) continue;
    const middle = Math.exp(exact.reduce((sum, cuts) => sum + Math.log(cuts), 0) / exact.length);
    expect(Math.abs(Math.log(middle / lasting.median))).toBeLessThan(0.15);
  }
}

interface EdgeMade {
  medium: string;
  finish: string;
  start: number;
  half: number;
}

/** Readings of edges that fade by a power of 0.7, with a scatter that is the same every time. */
function tableOf(name: string, edges: EdgeMade[], lower: boolean): string {
  const rows = [["blade", "finish", "medium", "run", "block", "cuts", "reading", "unit", "kind"]];
  const [unit, kind] = lower ? ["gf", "thread_push"] : ["mm", "card_bite"];
  for (const { medium, finish, start, half } of edges) {
    for (const run of [1, 2, 3, 4]) {
      for (const cuts of [0, 1, 3, 7, 15, 31, 63]) {
        const own = half * Math.exp(0.12 * Math.sin(7 * run + start));
        const blunter = (1 + (cuts / own) ** 0.7) * Math.exp(0.04 * Math.sin(3 * cuts + 5 * run));
        const reading = lower ? start * blunter : start / blunter;
        const [where, read] = [String(cuts), reading.toPrecision(4)];
        rows.push(["A", finish, medium, String(run), String(run), where, read, unit, kind]);
      }
    }
  }
  return writeTable(files.file(name), rows);
}

describe("two media compared at two readings", () => {
  test.each([
    ["lower", [130, 80, 300, 150]],
    ["higher", [10, 16, 4, 8]],
  ])(
    "say each its own, where %s is keener",
    async (keener, starts) => {
      const [a = 1, b = 1, c = 1, d = 1] = starts;
      const edges = [
        { medium: "rope", finish: "F220", start: a, half: 12 },
        { medium: "rope", finish: "F1200", start: b, half: 9 },
        { medium: "board", finish: "F220", start: c, half: 8 },
        { medium: "board", finish: "F1200", start: d, half: 7 },
      ];
      const table = tableOf(`${keener}.csv`, edges, keener === "lower");
      const { page, report } = await told(keener, table);
      const judged = at(report.judgements, 0);
      const readings = judged.media.map(({ at }) =>
        at.what === "common_reading" ? at.reading : Number.NaN,
      );

      expect(new Set(readings).size).toBe(2);
      await agrees(page, judged, 0);
      expectEdgesAmongTheirRuns(judged);
      for (const [place, { words, lasting_words }] of judged.media.entries()) {
        const to = lasting_words.replace(/^cuts /, "");
        const own = page.locator(`figure[data-medium="${place}"]`);
        expect(await own.locator("figcaption").first().textContent()).toContain(
          String(readings[place]),
        );
        const answers = await page.locator(`#answer :text-is("On ${words}") ~ p`).allTextContents();
        expect(answers[0]).toContain(to);
      }
      const across = await page.locator("figure[data-figure=media] tbody tr").allTextContents();
      expect(across.length).toBe(2);
      const caption = page.locator("figure[data-figure=media] figcaption");
      expect(await caption.textContent()).toContain((judged.media_lasting_words ?? "?").slice(5));
    },
    60_000,
  );
});

test("edges read against edges tested stand at the level that failing stands for", async () => {
  const { page, report } = await told("both", examples("edge-lives/read_and_tested.csv"));
  const place = report.judgements.findIndex(
    ({ judgement }) => judgement.kind.name === "read_and_tested",
  );
  const judged = at(report.judgements, place);

  await agrees(page, judged, place);
  expectEdgesAmongTheirRuns(judged);
}, 60_000);

test("an edge that failed at the first try lasted at most so long, in list and picture", async () => {
  const table = writeTable(
    files.file("first_try.csv"),
    [
      ["blade", "medium", "run", "test", "lasted", "failed by"],
      ...["A", "B"].flatMap((blade) =>
        [1, 2, 3, 4].map((run) => [blade, "rope", String(run), "slices newsprint", "", ""]),
      ),
    ].map((cells, row) => {
      if (row === 0) return cells;
      const [passed, failed] = row === 1 ? ["0", "5"] : [String(10 * row), String(10 * row + 10)];
      return [...cells.slice(0, 4), passed, failed];
    }),
  );
  const { page, report } = await told("first_try", table);
  const judged = at(report.judgements, 0);

  expect(at(judged.runs, 0).lasting).toEqual({ known: "at_most", cuts: 5, words: "at most 5.0" });
  await agrees(page, judged, 0);
  const drawn = page.locator('figure[data-figure=lasting] [data-run="0:0"]');
  expect(await drawn.textContent()).toBe("←");
}, 60_000);
