// A run at the bench on a phone: from the matched start to its trial, through a program that goes away
// and a page that is loaded again.

import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import type { Bench, BenchRun, Home, Trial } from "../src/wire/api";
import { askApi, button, desktop, faults, phone, sitDown } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";
import { sealedTrial, twoBlades } from "./sealed";

serveForEach();

/** A trial with a sealed plan that is cut on rope. Out: its uid. */
const sealedRope = (checkpoints: number[], repeats: number) =>
  sealedTrial(
    app,
    twoBlades(
      ["A", "C"],
      {
        medium: "new sisal",
        method: { motion: "slice", cut_length_mm: 100 },
        checkpoint_cuts: checkpoints,
      },
      {
        reading: { kind: "thread_push", repeats, stations: ["heel", "middle", "tip"] },
        start_gate: { target_reading: 104, tolerance_fraction: 0.12 },
        stop: { level: 4, force_cap_newton: 60 },
      },
    ),
  );

/** At the run that comes first, which is begun. */
async function atTheRun(trial: string, size = phone): Promise<Page> {
  const { page } = await sitDown(browser, app.address, size);
  await page.goto(new URL(`/trials/${trial}/plan`, app.address).href);
  await page.getByRole("link", { name: "Cut it at the bench" }).click();
  await button(page, "I have read this").click();
  await button(page, "Begin it").click();
  await page.getByText("Before the first cut").waitFor();
  return page;
}
const runOf = (page: Page) => new URL(page.url()).searchParams.get("run") ?? "";
const kept = async (page: Page) =>
  (await askApi<BenchRun>(app, "GET", `/bench/${runOf(page)}`)).standing;

async function type(page: Page, reading: string): Promise<void> {
  for (const key of reading) await page.getByRole("button", { name: key, exact: true }).click();
  await button(page, "Enter").click();
}
const read = (page: Page, reading: number) => type(page, String(reading));
const cut = (page: Page) => button(page, /^\+1 cut$/);
const count = (page: Page) => page.locator(".count").textContent();

describe.each([
  ["a phone", phone],
  ["a desktop", desktop],
])("On %s", (_where, size) => {
  test("a run goes from its start into its trial", async () => {
    const trial = await sealedRope([0, 1, 3], 3);
    const page = await atTheRun(trial, size);
    expect(await faults(page)).toEqual([]);
    for (const reading of [103, 105, 104]) await read(page, reading);
    await button(page, "Matched: begin to cut").click();
    await page.getByText("1 cut to go").waitFor();
    expect(await faults(page)).toEqual([]);

    await cut(page).click({ delay: 90 });
    await page.getByText("Read now").waitFor();
    expect(await faults(page)).toEqual([]);
    for (const reading of [110, 112]) await read(page, reading);
    await read(page, 1120);
    await page.getByText("Look again?").waitFor();
    expect(await faults(page)).toEqual([]);
    await button(page, "Type again").click();
    await read(page, 111);
    await page.getByText("2 cuts to go").waitFor();
    expect(await page.getByText("112").count()).toBe(0);

    await cut(page).click({ delay: 90 });
    await button(page, "Pause").click();
    await button(page, "Go on").click();
    await cut(page).click({ delay: 90 });
    for (const reading of [125, 124, 126]) await read(page, reading);
    await button(page, "Close the run").click();
    await page.getByText("It is in Sisal").waitFor();
    expect(await faults(page)).toEqual([]);

    const { recorded } = await askApi<Trial>(app, "GET", `/trials/${trial}`);
    expect(recorded.runs.map(({ readings }) => readings.length)).toEqual([9]);
    await page.getByRole("link", { name: "The next run" }).click();
    await page.getByText("Next: A in new sisal, run 1").waitFor();
    expect(await faults(page)).toEqual([]);
  });
});

test("by the keyboard alone a run of the demo's protocol: 255 cuts, nine checkpoints of seven", async () => {
  const checkpoints = [0, 1, 3, 7, 15, 31, 63, 127, 255];
  const page = await atTheRun(await sealedRope(checkpoints, 7));
  let pressed = 0;
  const press = async (key: string) => {
    pressed += 1;
    await page.keyboard.press(key);
  };
  const type = async (reading: number) => {
    for (const digit of String(reading)) await press(digit);
    await press("Enter");
  };
  for (let at = 0; at < 7; at++) await type(104);
  await button(page, "Matched: begin to cut").focus();
  await press("Enter");
  let cuts = 0;
  for (const checkpoint of checkpoints.slice(1)) {
    await page.getByText("to go").waitFor();
    await page.evaluate(() => (document.activeElement as HTMLElement)?.blur());
    for (; cuts < checkpoint; cuts++) await press("Space");
    await page.getByText("Read now").waitFor();
    for (let at = 0; at < 7; at++) await type(104 + checkpoint);
  }
  await button(page, "Close the run").click();
  await page.getByText("It is in Sisal").waitFor();

  const standing = await kept(page);
  expect(standing.cuts).toBe(255);
  expect(standing.readings?.length).toBe(63);
  // A stroke for each cut, and for each reading its digits and one more: what paper takes, and a line.
  expect(pressed).toBe(255 + 63 * 4 + 1);
});

test("what is tapped while the program is away arrives once, in order, after a reload", async () => {
  const page = await atTheRun(await sealedRope([0, 20, 40], 1));
  await read(page, 104);
  await button(page, "Matched: begin to cut").click();
  await cut(page).click({ delay: 90 });
  await expect.poll(async () => (await kept(page)).cuts).toBe(1);

  await page.route("**/api/**", (route) => route.abort());
  for (let times = 0; times < 5; times++) await cut(page).click({ delay: 90 });
  await button(page, /^Take back/).click();
  await page.getByText("Keenfall does not answer").waitFor();
  await expect.poll(() => count(page)).toBe("5");
  expect(await faults(page)).toEqual([]);
  expect((await kept(page)).cuts).toBe(1);

  await page.unroute("**/api/**");
  await page.reload();
  await expect.poll(async () => (await kept(page)).cuts).toBe(5);
  await expect.poll(() => count(page)).toBe("5");
  await page.getByText("All is kept").waitFor();
});

test("a network that swallows all that is asked holds nobody up", async () => {
  const page = await atTheRun(await sealedRope([0, 20, 40], 1));
  await page.route("**/api/**", () => undefined);

  await read(page, 104);
  await page.getByText("1 not kept yet").waitFor({ timeout: 5_000 });

  await page.reload();
  await page.unroute("**/api/**");
  await expect.poll(async () => (await kept(page)).start.readings).toBe(1);
});

test("two devices on one run stay in step within a second", async () => {
  const page = await atTheRun(await sealedRope([0, 20, 40], 1));
  await read(page, 104);
  await button(page, "Matched: begin to cut").click();
  await page.getByText("20 cuts to go").waitFor();
  const { page: other } = await sitDown(browser, app.address, phone);
  await other.goto(page.url());
  await other.getByText("20 cuts to go").waitFor();

  await cut(page).click({ delay: 90 });
  await other.getByText("19 cuts to go").waitFor({ timeout: 1_000 });
  await cut(other).click({ delay: 90 });
  await page.getByText("18 cuts to go").waitFor({ timeout: 1_000 });
});

const linesOf = (trial: string) => askApi<Bench>(app, "GET", `/trials/${trial}/bench`);

test("a run that was undone in the journal is open again, and is put in again or cut anew", async () => {
  const trial = await sealedRope([0, 1, 2], 1);
  const page = await atTheRun(trial);
  await read(page, 104);
  await button(page, "Matched: begin to cut").click();
  await cut(page).click({ delay: 90 });
  await read(page, 110);
  await cut(page).click({ delay: 90 });
  await read(page, 120);
  await button(page, "Close the run").click();
  await page.getByText("It is in Sisal").waitFor();
  const { undoes } = await askApi<Home>(app, "GET", "/home");
  await askApi(app, "POST", `/journal/${undoes?.entry}/undo`, {});

  await page.goto(new URL(`/bench?trial=${trial}`, app.address).href);
  await page.getByText("open again").waitFor();
  await page.getByText("Next: C in new sisal, run 1").waitFor();
  expect(await faults(page)).toEqual([]);
  await page.getByRole("link", { name: "put in again" }).click();
  await page.getByText("what put it there was undone").waitFor();
  expect(await faults(page)).toEqual([]);
  await button(page, "Put it into the trial").click();
  await page.getByText("It is in Sisal").waitFor();
  expect((await linesOf(trial)).lines[0]?.state).toBe("cut");
});

test("whoever ends a run in which nothing was read is asked, and it stays to be cut", async () => {
  const trial = await sealedRope([0, 1, 2], 1);
  const page = await atTheRun(trial);
  await button(page, "More …").click();
  await page.getByLabel("In words").fill("no light");
  await button(page, "End the run here").click();
  await page.getByText("Nothing was read in this run").waitFor();
  expect(await faults(page)).toEqual([]);
  await button(page, "Go on with it").click();
  await page.getByText("Before the first cut").waitFor();

  await button(page, "More …").click();
  await page.getByLabel("In words").fill("no light");
  await button(page, "End the run here").click();
  await button(page, "End it all the same").click();
  await page.getByText(/nothing was read in it/i).waitFor();
  expect(await faults(page)).toEqual([]);
  expect((await linesOf(trial)).lines[0]?.state).toBe("nothing_read");
});

test("a reading far from expectation is asked about, and what is typed on meanwhile stands behind it", async () => {
  const page = await atTheRun(await sealedRope([0, 1, 2], 3));
  await read(page, 1040);
  await page.getByText("Look again? 1040 gf is far from what was to be expected.").waitFor();
  expect(await faults(page)).toEqual([]);
  await button(page, "Type again").click();
  await read(page, 104);
  await expect.poll(async () => (await kept(page)).readings_taken).toBe(1);

  await read(page, 1050);
  await page.getByLabel("A note, if it is so").fill("held twice");
  await button(page, "It is so").click();
  await expect.poll(async () => (await kept(page)).readings_taken).toBe(2);
});

test("readings are shown and taken in the unit that was chosen", async () => {
  const trial = await sealedRope([0, 1, 2], 1);
  const { page } = await sitDown(browser, app.address, phone);
  await page.evaluate(() => localStorage.setItem("keenfall.told-in", "N,"));
  await page.goto(new URL(`/bench?trial=${trial}`, app.address).href);
  await button(page, "I have read this").click();
  await button(page, "Begin it").click();
  await page.getByText("Start 0.897 to 1.14 N.").waitFor();
  await type(page, "1.02");
  await button(page, "Matched: begin to cut").click();
  await cut(page).click({ delay: 90 });
  await type(page, "1.2");
  await cut(page).click({ delay: 90 });
  await type(page, "1.3");
  await button(page, "Close the run").click();
  await page.getByText("It is in Sisal").waitFor();
  await page.getByRole("cell", { name: "1.02" }).waitFor();

  const { recorded } = await askApi<Trial>(app, "GET", `/trials/${trial}`);
  expect(recorded.runs[0]?.readings.map(({ reading }) => reading)).toEqual([1.02, 1.2, 1.3]);
});
