// Other units, chosen once: the same answer everywhere, in what is shown and what is typed.

import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { faults, type ServedApp, serveApp, sitDown } from "./app_opened";
import { startBrowser } from "./opened";

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  browser = await startBrowser();
  app = await serveApp();
});
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
const figure = (page: Page) => page.locator("figure svg").first();
const headline = (page: Page) => page.locator(".headline").first().textContent();
/** Of the first figure's axis of readings. */
const axis = (page: Page) => figure(page).locator("text", { hasText: /thread push reading,/ });

async function choose(page: Page, what: string, unit: string): Promise<void> {
  await page.getByLabel(what).selectOption(unit);
}

test("are chosen once, remembered, shown everywhere and change no answer", async () => {
  const { page, complaints } = await sitDown(browser, app.address);
  await button(page, "Open the demo").click();
  await page.locator("article h2 a").first().click();
  await figure(page).waitFor();
  await page.getByText(/A first look/).waitFor({ state: "detached", timeout: 60_000 });
  const answer = await headline(page);
  expect(await axis(page).textContent()).toContain("gf");

  await choose(page, "Forces in", "N");
  await choose(page, "Lengths in", "in");

  await expect.poll(() => axis(page).textContent()).toContain("thread push reading, N");
  const main = page.locator("main");
  await expect.poll(() => main.textContent()).toContain(" ft)");
  expect(await headline(page)).toBe(answer);
  // What a person noted stays as it was written.
  const noted = /(rose from|start gate failed at) [^:;]*/g;
  const told = (await main.textContent())?.replaceAll(noted, "");
  expect(told).not.toMatch(/\d gf\b|\d mm\b(?! polyester)/);
  expect(await faults(page)).toEqual([]);

  await page.locator("summary", { hasText: /runs$/ }).first().click();
  await button(page, /, run /)
    .first()
    .click();
  const reading = page.getByRole("button", { name: /strike out$/ }).first();
  expect(await reading.getAttribute("aria-label")).toMatch(/^[01]\.\d+.*, N, after 0 cuts/);

  await page.reload();
  await figure(page).waitFor();
  await expect.poll(() => axis(page).textContent()).toContain("N");
  expect(await page.getByLabel("Lengths in").inputValue()).toBe("in");

  await page.locator("header").getByRole("link", { name: /Tell/ }).click();
  await page.getByText("The report is told in N and in").waitFor();
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 90_000 }),
    button(page, "The report").click(),
  ]);
  const report = readFileSync(await download.path(), "utf8");
  expect(report).toContain("thread push reading in gf, told in N");
  expect(report).toContain("--told-in=N,in");
  expect(complaints).toEqual([]);
});

test("stand in a sheet that nothing was typed into, and are what is taken in", async () => {
  const { page } = await sitDown(browser, app.address);
  await page.goto(new URL("/enter", app.address).href);
  const unit = page.locator('[data-cell="3:1"]');
  await unit.waitFor();
  expect(await unit.inputValue()).toBe("");

  await choose(page, "Forces in", "N");
  await expect.poll(() => unit.inputValue()).toBe("N");
  const typed = ["A", "rope", "1", "", "", "1.02", "1.5", "2"];
  for (const [row, text] of typed.entries())
    if (text) await page.locator(`[data-cell="${row}:1"]`).fill(text);
  await page.getByLabel("What the trial is called").fill("Rope in newtons");
  await expect.poll(() => button(page, "Take it in").isEnabled()).toBe(true);
  await button(page, "Take it in").click();
  await page.getByRole("heading", { name: "Judge: Rope in newtons" }).waitFor();

  await choose(page, "Forces in", "gf");
  await expect.poll(() => axis(page).textContent()).toContain("gf");
  await page.locator("summary", { hasText: "Its one run" }).click();
  await button(page, "A, run 1").click();
  const reading = page.getByRole("button", { name: /after 0 cuts: correct or strike out$/ });
  expect(await reading.getAttribute("aria-label")).toMatch(/^104, gf/);
});

test("hold for what forms ask and the kit tells", async () => {
  const { page, complaints } = await sitDown(browser, app.address);
  await page.goto(new URL("/kit", app.address).href);
  await choose(page, "Lengths in", "in");
  await button(page, /^Add an? edge$/).click();
  await page.getByLabel("Name (needed)", { exact: true }).fill("thin");
  await page.getByLabel("Thickness behind the edge, in").fill("0.015");
  await button(page, "Keep it").click();
  await page.getByText("0.015 in behind the edge").waitFor();

  await choose(page, "Lengths in", "mm");
  await page.getByText("0.381 mm behind the edge").waitFor();
  expect(complaints).toEqual([]);
});
