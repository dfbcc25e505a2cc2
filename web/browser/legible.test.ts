// Every screen can be read and hit: large, with large text, on a phone; also where names are long.

import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import type { Plan, Trial } from "../src/wire/api";
import { askApi, type ServedApp, serveApp } from "./app_opened";
import { cutOff, sideways, tooSmall } from "./measured";
import { keenfall, scratch, startBrowser, writeTable } from "./opened";

const blades = [
  "The felt-handled trimming knife from the drawer beside the window, reground twice",
  "Averylongbladenamewithoutanyspaceinitwhichcannotbebrokenatanyword",
];
const medium = "Uplifted entrance matting from the municipal baths, vacuumed and beaten";
const cuts = [0, 1, 3, 7, 15, 31];

function longTable(): string[][] {
  const rows = [["blade", "medium", "run", "block", "cut_length_mm", "cuts", "reading", "note"]];
  for (const [place, blade] of blades.entries()) {
    for (const run of ["1", "2", "3"]) {
      for (const at of cuts) {
        const reading = 100 * (1 + (at / (12 + 20 * place + 3 * Number(run))) ** 0.7);
        const note = at === 0 ? "the underlay slipped a little and was nailed down again" : "";
        const readings = [medium, run, run, "100", String(at), reading.toFixed(1), note];
        rows.push([blade, ...readings]);
      }
    }
  }
  return rows;
}

/** Every blade with every edge in every medium, of which the names are long. */
function longPlan(): Plan {
  const edges = [15, 20].map((bevel_angle_per_side_deg) => ({
    bevel_angle_per_side_deg,
    finish: "the worn side of the nine micrometre diamond lapping film, on plate glass",
  }));
  const cuttings = [medium, "Manila"].map((name) => ({
    medium: name,
    lot: "the third roll from the municipal store",
    method: { motion: "slice" as const, cut_length_mm: 25, board: blades[1] },
    checkpoint_cuts: [0, 1, 3, 7, 15, 31, 63, 127, 255],
  }));
  const arms = cuttings.flatMap((_, cutting) =>
    blades.flatMap((blade) => edges.map((edge) => ({ blade, edge, cutting }))),
  );
  const reading = { kind: "thread_push", repeats: 7, thread: "0.25 mm polyester, undyed" };
  const start_gate = { target_reading: 104, tolerance_fraction: 0.12 };
  const stop = { level: 4, force_cap_newton: 60 };
  return { cuttings, arms, reading, start_gate, stop, runs_each: 6, order_seed: 1, runs: [] };
}

async function planTrial(name: string): Promise<string> {
  const plan = await askApi<Plan>(app, "POST", "/planning/order", longPlan());
  const words = `Slicing ${medium}, ${blades[1]} stays keen at least twice as long as ${blades[0]}.`;
  const asked = { claims: [{ words, worth_it_margin: 2 }], plan };
  return (await askApi<Trial>(app, "POST", "/trials", { name, asked })).uid;
}

/** Of the trials that are planned: one a draft, one sealed. */
let planned: string[] = [];
const folder = scratch();
const notebook = folder.file("Everything that was cut in autumn on the old bench.keen");
let app: ServedApp;

beforeAll(async () => {
  keenfall("new", notebook);
  keenfall(
    "take",
    notebook,
    writeTable(folder.file("long.csv"), longTable()),
    "--trial=Which of the two trimming knives keeps its edge longer in uplifted matting",
  );
  const strike = ["--blade", blades[0] ?? "", "--run=1", "--cuts=3", "--reason=the thread slipped"];
  keenfall("strike", notebook, ...strike);
  app = await serveApp(notebook);
  planned = [await planTrial("What is planned for the spring"), await planTrial("And sealed")];
  await askApi(app, "POST", `/trials/${planned[1]}/seal`);
});
afterAll(async () => {
  await app?.stop();
  folder.gone();
});

async function settled(page: Page): Promise<void> {
  await page.getByRole("heading", { level: 1 }).waitFor();
  const working = /^(Opening|Looking|Reading it|Trying the plan|Counting) …$|A first look\./;
  await expect.poll(() => page.getByText(working).count(), { timeout: 60_000 }).toBe(0);
}

async function expectLegible(page: Page, where: string): Promise<void> {
  const faults = [...(await sideways(page)), ...(await cutOff(page)), ...(await tooSmall(page))];
  expect(faults, where).toEqual([]);
}

/** Wherever the margin leads, and what it does not lead to. */
async function screensOf(page: Page): Promise<string[]> {
  const links = await page.locator("header a, article a").all();
  const paths = await Promise.all(links.map((link) => link.getAttribute("href")));
  const plans = planned.flatMap((uid) =>
    ["ask", "plan", "enter"].map((step) => `/trials/${uid}/${step}`),
  );
  return [
    ...new Set([...paths, ...plans, "/start", "/enter", "/search?text=a", "/nowhere"]),
  ].filter((path) => path !== null);
}

const large: BrowserContextOptions = {
  viewport: { width: 640, height: 400 },
  deviceScaleFactor: 2,
};

describe.each([
  ["on a desktop", { viewport: { width: 1280, height: 800 } }, []],
  ["at 200 % on a desktop", large, []],
  [
    "with text of twice the size",
    { viewport: { width: 1280, height: 800 } },
    ["--blink-settings=defaultFontSize=32"],
  ],
  ["on a phone", { viewport: { width: 360, height: 740 } }, []],
])("%s", (_way, context, args) => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser(args);
  });
  afterEach(async () => {
    for (const opened of browser.contexts()) await opened.close();
  });
  afterAll(() => browser?.close());

  async function sitDown(): Promise<Page> {
    const page = await (await browser.newContext(context)).newPage();
    page.setDefaultTimeout(20_000);
    await page.goto(app.address);
    await settled(page);
    return page;
  }

  test("every screen", async () => {
    const page = await sitDown();
    await page.goto(new URL(`${await trialOf(page)}/judge`, app.address).href);
    await settled(page);
    const screens = await screensOf(page);
    expect(screens.length).toBeGreaterThan(8);
    for (const path of screens) {
      await page.goto(new URL(path, app.address).href);
      await settled(page);
      await expectLegible(page, path);
    }
  });

  test("a trial judged, its runs and one of them, striking out", async () => {
    const page = await sitDown();
    await page.goto(new URL(`${await trialOf(page)}/judge`, app.address).href);
    await settled(page);
    await page.locator("figure svg").first().waitFor();
    for (const summary of await page.locator("main summary").all()) await summary.click();
    await page
      .getByRole("button", { name: /, run / })
      .first()
      .click();
    await page
      .getByRole("button", { name: /strike out$/ })
      .first()
      .click();
    await page.getByRole("button", { name: "Compare at one reading" }).click();

    await expectLegible(page, "judge");
  });

  test("a sheet with a mistake in it", async () => {
    const page = await sitDown();
    await page.goto(new URL("/enter", app.address).href);
    const cell = (row: number) => page.locator(`[data-cell="${row}:1"]`);
    for (const [row, text] of [blades[0] ?? "", medium, "1", "gf"].entries())
      await cell(row).fill(text);
    await cell(5).fill("l04");
    await page.locator(".problems button").first().waitFor();
    for (const summary of await page.locator("main summary").all()) await summary.click();

    await expectLegible(page, "enter");
  });
});

/** The address of the one trial, without its step. */
async function trialOf(page: Page): Promise<string> {
  const link = page.locator("article h2 a", { hasText: "Which of the two" });
  await link.waitFor();
  return ((await link.getAttribute("href")) ?? "").replace(/\/[a-z]+$/, "");
}
