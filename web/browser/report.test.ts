// A report as a person meets it: opened from a disk, on a phone, in the dark, without script, printed.

import { execFileSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  chromiumPath,
  examples,
  keenfall,
  open,
  scratch,
  shown,
  startBrowser,
  type Way,
  writeTable,
} from "./opened";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const files = scratch();
let browser: Browser;

// As examples/milling/README.md judges it.
const millingColumns = [
  ...[
    "blade=condition",
    "medium=material",
    "run=insert_set",
    "cuts=time_min",
    "reading=vb_mm",
  ].flatMap((column) => ["--column", column]),
  "--define-kind",
  "flank_wear:mm:lower:zero=below:0.01",
  "--kind",
  "flank_wear",
  "--stop-reading",
  "0.3mm",
];

/** A small table: two blades, so many runs each, with the given names. */
function table(name: string, first: string, second: string, runs: number): string {
  const rows = [["blade", "medium", "run", "cuts", "reading", "note"]];
  [first, second].forEach((blade, place) => {
    for (let run = 1; run <= runs; run++) {
      for (const cuts of [0, 1, 3, 7, 15, 31]) {
        const half = 8 * (1 + 2 * place) * (1 + 0.1 * ((run * 7) % 5));
        const wobble = 1 + 0.04 * (((run * 31 + cuts * 17) % 7) - 3);
        const reading = 100 * (1 + (cuts / half) ** 0.7) * wobble;
        rows.push([blade, "sisal", String(run), String(cuts), reading.toFixed(1), ""]);
      }
    }
  });
  return writeTable(files.file(name), rows);
}

beforeAll(async () => {
  browser = await startBrowser();
  keenfall(
    "demo",
    "--quiet",
    `--out=${files.file("demo.html")}`,
    `--table=${files.file("demo.csv")}`,
  );
  keenfall(
    "tell",
    examples("milling/milling_flank_wear.csv"),
    ...millingColumns,
    "--quiet",
    `--out=${files.file("milling.html")}`,
  );
  keenfall(
    "tell",
    examples("edge-lives/edge_lives.csv"),
    "--quiet",
    `--out=${files.file("lives.html")}`,
  );
});

afterAll(async () => {
  await browser?.close();
  files.gone();
});

const widthOf = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth);

/** What bars somebody from the page, as axe finds it; everything that can be opened is open. */
async function faults(file: string, way: Way): Promise<string[]> {
  // The checker is a script of the test's, which the page's content policy would not let run.
  const { page } = await open(browser, file, { ...way, bypassPolicy: true });
  await page.addScriptTag({ content: axe });
  return page.evaluate(async () => {
    for (const details of document.querySelectorAll("details")) details.open = true;
    const checker = (globalThis as unknown as { axe: typeof import("axe-core") }).axe;
    const { violations } = await checker.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`);
  });
}

describe.each(["demo.html", "milling.html", "lives.html"])("the report %s", (name) => {
  test("opens without a complaint, fetches nothing and draws every picture", async () => {
    const { page, complaints, fetched } = await open(browser, files.file(name));
    const { figures, pictures } = await shown(page);

    expect(complaints).toEqual([]);
    expect(fetched).toEqual([]);
    expect(figures).toBeGreaterThan(0);
    expect(pictures).toBe(figures);
  });

  test.each([
    ["wide and light", { width: 1000, dark: false }],
    ["wide and dark", { width: 1000, dark: true }],
    ["a phone, light", { width: 360, dark: false }],
    ["a phone, dark", { width: 360, dark: true }],
  ])("has nothing that bars anyone: %s", async (_way, way) => {
    const { page } = await open(browser, files.file(name), way);

    expect(await widthOf(page)).toBeLessThanOrEqual(way.width);
    expect(await faults(files.file(name), way)).toEqual([]);
  });

  test("says everything without script", async () => {
    const { page } = await open(browser, files.file(name), { script: false });
    const words = await page.locator(".in-words").allTextContents();
    const tables = await page.locator("figure table").count();

    expect(words.length).toBe(await page.locator("figure[data-figure]").count());
    for (const text of words) expect(text.length).toBeGreaterThan(20);
    expect(tables).toBe(words.length);
    expect(await page.locator(".picture:visible").count()).toBe(0);
  });

  test("has less than 345 kB besides what it tells of the trial", () => {
    const html = readFileSync(files.file(name), "utf8");
    const frame = html
      .replace(/(id="report-data">).*?(<\/script>)/s, "$1$2")
      .replace(/<section id="(?!calculated).*?<\/section>/gs, "");

    expect(frame).toContain("How it was calculated");
    expect(frame).not.toContain("<table>");
    expect(Buffer.byteLength(frame)).toBeLessThan(345_000);
  });

  test.each(["A4", "Letter"])("prints on %s by the browser's own command", async (paper) => {
    const { page } = await open(browser, files.file(name));
    const pdf = files.file(`${name}.${paper}.pdf`);
    await page.pdf({ path: pdf, format: paper, preferCSSPageSize: false });
    const text = execFileSync("pdftotext", ["-raw", pdf, "-"], { encoding: "utf8" });
    const words = text.replace(/\s+/g, " ");

    expect(text).toContain("The answer");
    expect(text).toContain("Cut away from yourself");
    // Heads of the tables behind the pictures.
    expect(words).toMatch(/95 %, taken by itself/);
    expect(words).toMatch(/runs scatter by/);
    expect(statSync(pdf).size).toBeGreaterThan(20_000);
  });
});

describe("the demo's report", () => {
  test("becomes a PDF by the command that docs/report.md names", () => {
    const pdf = files.file("by command.pdf");
    execFileSync(
      chromiumPath(),
      [
        "--headless",
        "--no-sandbox",
        "--no-pdf-header-footer",
        `--print-to-pdf=${pdf}`,
        files.file("demo.html"),
      ],
      { stdio: "ignore", timeout: 60_000 },
    );
    const pages = execFileSync("pdftotext", [pdf, "-"], { encoding: "utf8" });

    expect(pages).toContain("C stays keen");
    expect(pages).toContain("half keenness");
  });

  test("has no address that it would fetch", () => {
    const html = readFileSync(files.file("demo.html"), "utf8").replace(
      /<script>.*?<\/script>/s,
      "",
    );

    expect(html).not.toMatch(/(src|srcset|poster|action)=/);
    expect(html.match(/href="(?!#|data:text\/csv)[^"]*"/)).toBeNull();
    expect(html).not.toMatch(/url\(|@import/);
  });

  test("gives back the table that the program tells, byte for byte", async () => {
    const { page } = await open(browser, files.file("demo.html"));
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("link", { name: /save the readings/ }).click(),
    ]);
    const saved = readFileSync(await download.path(), "utf8");

    expect(download.suggestedFilename()).toBe("readings.csv");
    expect(saved).toBe(readFileSync(files.file("demo.csv"), "utf8"));
  });

  test("follows a run by keyboard through every picture", async () => {
    const { page } = await open(browser, files.file("demo.html"));
    const button = page.locator("tr[data-run] button").first();
    await button.focus();
    await page.keyboard.press("Enter");
    const key = await page.locator("tr[data-run]").first().getAttribute("data-run");

    expect(await button.getAttribute("aria-pressed")).toBe("true");
    const marked = page.locator(`svg [data-run="${key}"].marked-run`);
    expect(await marked.count()).toBeGreaterThanOrEqual(4);
    await page.keyboard.press("Enter");
    expect(await marked.count()).toBe(0);
  });

  test("reads every curve off, and hides what was struck out", async () => {
    const { page } = await open(browser, files.file("demo.html"));
    const figure = page.locator("figure[data-figure=curves]").first();
    await figure.locator("input[type=range]").focus();
    await page.keyboard.press("End");

    expect(await figure.locator(".read-off").textContent()).toMatch(/At \d+ cuts: ?A \d+ gf/);
    const struck = figure.locator(".struck").first();
    expect(await struck.isVisible()).toBe(true);
    await figure.locator("input[type=checkbox]").uncheck();
    expect(await struck.isVisible()).toBe(false);
  });
});

describe("reports of unusual trials", () => {
  test("a name turns no number round, neither in words nor in pictures", async () => {
    const turning = "A\u202egnol\u2066";
    const source = table("turning.csv", turning, "B", 3);
    const out = files.file("turning.html");
    keenfall("tell", source, "--quiet", `--out=${out}`);
    const { page } = await open(browser, out);
    const text = (await page.locator("body").textContent()) ?? "";

    expect(text).toContain("A\ufffdgnol\ufffd");
    expect(text).not.toMatch(/[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\u0080-\u009f]/);
    expect(await page.locator("svg text").allTextContents()).toContain("A\ufffdgnol\ufffd");
  });

  test("script in a name stays text", async () => {
    const evil = "</script><script>alert(1)</script><img src=x onerror=alert(2)>";
    const source = table("evil.csv", evil, "\"'&<b>bold</b>", 3);
    const out = files.file("evil.html");
    keenfall("tell", source, "--quiet", `--out=${out}`);
    const { page, complaints, fetched } = await open(browser, out);

    expect(complaints).toEqual([]);
    expect(fetched).toEqual([]);
    expect(await page.locator("b:text-is('bold'), img").count()).toBe(0);
    expect(await page.locator("main").textContent()).toContain(evil);
  });

  test.each([1, 40])(
    "%i runs of each edge: every picture is drawn and none is too wide",
    async (runs) => {
      const source = table(
        `runs ${runs}.csv`,
        "A",
        "a blade whose name goes on and on and on and on",
        runs,
      );
      const out = files.file(`runs ${runs}.html`);
      try {
        keenfall("tell", source, "--quiet", `--out=${out}`);
      } catch (failure) {
        // One run of each: the fit may not be usable, and the report says so.
        expect((failure as { status: number }).status).toBe(1);
      }
      for (const width of [360, 1000]) {
        const { page, complaints } = await open(browser, out, { width });
        const { figures, pictures } = await shown(page);
        expect(complaints).toEqual([]);
        expect(pictures).toBe(figures);
        expect(await widthOf(page)).toBeLessThanOrEqual(width);
      }
    },
  );
});
