// What pictures look like in a page: nothing lies outside them, no label covers another, the
// caption explains what is there, and tables beside them hold what they draw.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { at } from "../src/plots/view";
import type { Report } from "../src/wire/report";
import { examples, keenfall, open, scratch, startBrowser, writeTable } from "./opened";
import { says } from "./said";

const files = scratch();
let browser: Browser;

const columns = ["blade", "medium", "run", "block", "order", "cuts", "reading", "unit", "kind"];

interface Series {
  blade: string;
  medium: string;
  finish?: string;
  half: number;
  falls?: boolean;
}

/** Four runs in two blocks for each series; the order begins anew in each block. */
function table(name: string, series: Series[]): string {
  const rows = [[...columns, "finish"]];
  series.forEach(({ blade, medium, finish = "", half, falls = false }, place) => {
    for (let run = 1; run <= 4; run++) {
      const block = run <= 2 ? "1" : "2";
      const order = String(2 * place + ((run - 1) % 2) + 1);
      const own = half * (1 + 0.12 * (((run * 7 + place * 3) % 5) - 2));
      for (const cuts of [0, 1, 3, 7, 15, 31, 63]) {
        const wobble = 1 + 0.03 * (((run * 31 + cuts * 17 + place * 5) % 7) - 3);
        const blunted = 1 + (cuts / own) ** 0.7;
        const reading = (falls ? 10 / blunted : 100 * blunted) * wobble;
        const kind = falls ? ["mm", "card_bite"] : ["gf", "thread_push"];
        const which = [blade, medium, `${finish}${run}`, block, order];
        rows.push([...which, String(cuts), reading.toFixed(2), ...kind, finish]);
      }
    }
  });
  return writeTable(files.file(name), rows);
}

const told = ["demo", "milling", "lives", "crossed", "card"];

beforeAll(async () => {
  browser = await startBrowser();
  const tell = (name: string, ...words: string[]) =>
    keenfall("tell", ...words, "--quiet", `--out=${files.file(`${name}.html`)}`);
  keenfall("demo", "--quiet", `--out=${files.file("demo.html")}`);
  tell(
    "milling",
    ...[examples("milling/milling_flank_wear.csv"), "--column=blade=condition"],
    ...["--column=medium=material", "--column=run=insert_set", "--column=cuts=time_min"],
    ...["--column=reading=vb_mm", "--define-kind=flank_wear:mm:lower:zero=below:0.01"],
    ...["--kind=flank_wear", "--stop-reading=0.3mm"],
  );
  tell("lives", examples("edge-lives/edge_lives.csv"));
  const crossed = ["new sisal", "used sisal"].flatMap((medium, worn) =>
    ["coarse", "polished"].flatMap((finish, fine) =>
      ["A", "B"].map((blade, place) => {
        return { blade, medium, finish, half: (8 * (1 + place) * (1 + fine)) / (1 + worn) };
      }),
    ),
  );
  tell("crossed", table("crossed.csv", crossed));
  const steels = ["new steel", "old steel"].map((blade, place) => {
    return { blade, medium: "rope", half: place ? 9 : 24, falls: true };
  });
  tell("card", table("card.csv", steels));
}, 120_000);

afterAll(async () => {
  await browser?.close();
  files.gone();
});

const opened = async (name: string, width = 1000) =>
  (await open(browser, files.file(`${name}.html`), { width })).page;

async function judgedIn(page: Page) {
  const report: Report = await page.evaluate(() =>
    JSON.parse(document.getElementById("report-data")?.textContent ?? ""),
  );
  return at(report.judgements, 0);
}

const rowsOf = (page: Page, figure: string) =>
  page.$$eval(`figure[data-figure=${figure}] tbody tr`, (rows) =>
    rows.map((row) => [...row.querySelectorAll("th,td")].map((cell) => cell.textContent ?? "")),
  );

/** Marks and labels that lie outside their picture, and labels that cover each other. */
const misplaced = (page: Page) =>
  page.evaluate(() => {
    const found: string[] = [];
    for (const svg of document.querySelectorAll(".picture svg[role=img]")) {
      const name = svg.closest("figure")?.dataset.figure;
      const all = svg.getBoundingClientRect();
      const slack = 2;
      for (const mark of svg.querySelectorAll("path,circle,line,rect,text")) {
        const box = mark.getBoundingClientRect();
        const out =
          box.left < all.left - slack ||
          box.right > all.right + slack ||
          box.top < all.top - slack ||
          box.bottom > all.bottom + slack;
        if (out) found.push(`${name}: outside: ${mark.outerHTML.slice(0, 90)}`);
      }
      // Runs drawn by name are data, which may well lie on each other.
      const labels = [...svg.querySelectorAll("text:not([data-run])")].filter(
        (label) => label.textContent !== "",
      );
      labels.forEach((label, place) => {
        const a = label.getBoundingClientRect();
        for (const other of labels.slice(place + 1)) {
          const b = other.getBoundingClientRect();
          const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
          const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
          if (across > 1 && down > 3) {
            found.push(`${name}: ${label.textContent} on ${other.textContent}`);
          }
        }
      });
    }
    return found;
  });

describe.each(told)("the pictures of %s", (name) => {
  test.each([1000, 360])("hold all their marks, and labels apart, at %i pixels", async (width) => {
    const page = await opened(name, width);

    expect(await page.locator(".picture svg[role=img]").count()).toBeGreaterThan(0);
    expect(await misplaced(page)).toEqual([]);
  });

  test("have captions that explain what is there, and nothing else", async () => {
    const page = await opened(name);
    const seen = await page.$$eval("figure[data-figure=curves]", (figures) =>
      figures.map((figure) => ({
        caption: figure.querySelector("figcaption")?.textContent ?? "",
        marks: [".ring circle", ".struck path", ".events path", ".beyond rect"].map(
          (mark) => figure.querySelector(`.picture ${mark}`) !== null,
        ),
      })),
    );

    for (const { caption, marks } of seen) {
      const said = ["Rings:", "Crosses:", "Triangles:", "Shaded:"];
      expect(said.map((words) => caption.includes(words))).toEqual(marks);
    }
  });
});

test("the factors of a crossed table stand in its picture as in its numbers", async () => {
  const page = await opened("crossed");
  const { judgement, factor_effects: effects = [] } = await judgedIn(page);
  const found = judgement.factor_effects?.effects ?? [];
  const rows = await rowsOf(page, "factors");
  const texts = await page.$$eval("figure[data-figure=factors] svg text", (all) =>
    all.map((text) => text.textContent ?? ""),
  );

  expect(found.length).toBeGreaterThan(1);
  expect(rows.length).toBe(found.length);
  found.forEach(({ ratio, simultaneous, verdict }, place) => {
    says(rows[place]?.[3], [ratio.median]);
    says(rows[place]?.[4], [simultaneous.lo95, simultaneous.hi95]);
    expect(rows[place]?.[5]).toBe(verdict);
    const { words, ratio_words, interval_words } = at(effects, place);
    expect(ratio_words).toBe(rows[place]?.[3]);
    expect(interval_words).toBe(rows[place]?.[4]);
    expect(texts).toContain(words);
    expect(texts).toContain(`${ratio_words} (${interval_words})`);
  });
});

test("runs whose order begins anew in each block stand one after the other", async () => {
  const page = await opened("card");
  const rows = await rowsOf(page, "order");
  const { runs, order_words: axis, blocks } = await judgedIn(page);

  expect(rows.map(([place]) => Number(place))).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  expect(rows.map((cells) => cells[4])).toEqual(["1", "1", "1", "1", "2", "2", "2", "2"]);
  expect(new Set(runs.map(({ place }) => place)).size).toBe(8);
  expect(axis).toBe("order of cutting, block after block");
  expect(blocks.map(({ first, last }) => [first, last])).toEqual([
    [1, 4],
    [5, 8],
  ]);
});

test("where higher is keener, levels are shares of the start in axis, table and words", async () => {
  const page = await opened("card");
  const figure = page.locator("figure[data-figure=levels]").first();
  const texts = await figure.locator("svg text").allTextContents();
  const rows = await rowsOf(page, "levels");

  expect(texts).toEqual(expect.arrayContaining(["4/5", "2/3", "1/2", "1/3"]));
  expect(texts).toContain("reading, as a share of its start");
  expect(rows.map(([level]) => level)).toEqual(expect.arrayContaining(["4/5", "1/3"]));
  expect(await figure.locator(".in-words").textContent()).toContain("fallen to 4/5 of its start");
});

test.each(["milling", "lives", "crossed"])("the ratios and lives of %s", async (name) => {
  const page = await opened(name);
  const { judgement, media, names } = await judgedIn(page);
  const ratios = await rowsOf(page, "ratios");
  const lasting = await rowsOf(page, "lasting");
  const pairs = media.flatMap(({ comparisons }) => comparisons);
  const arms = media.flatMap((medium) => medium.arms).filter((arm) => at(names, arm).lasting);

  expect(ratios.length).toBe(pairs.length);
  pairs.forEach((index, row) => {
    const pair = at(judgement.comparisons, index);
    says(ratios[row]?.[1], [pair.ratio.median]);
    says(ratios[row]?.[2], [pair.simultaneous.lo95, pair.simultaneous.hi95]);
    for (const [column, chance] of [
      [5, pair.probability_longer],
      [6, pair.probability_worth_having],
    ] as const) {
      const inPercent = Math.min(99, Math.max(1, 100 * chance));
      says(ratios[row]?.[column], [Math.round(inPercent)]);
    }
  });
  expect(lasting.length).toBe(arms.length);
  arms.forEach((index, row) => {
    const arm = at(judgement.arms, index);
    expect(lasting[row]?.[1]).toBe(at(names, index).lasting?.words);
    says(lasting[row]?.[3], [100 * Math.expm1(arm.run_scatter_log_sd.median)]);
    says(lasting[row]?.[4], [arm.runs]);
    says(lasting[row]?.[5], [arm.specimens]);
  });
});
