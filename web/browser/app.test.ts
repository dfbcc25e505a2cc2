// The app as a person lives it, from the first screen: the program itself serves it.

import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import {
  button,
  desktop,
  faults,
  headline,
  inMargin,
  type Person,
  phone,
  sitDown,
  tabTo,
} from "./app_opened";
import { app, browser, serveForEach } from "./each_served";

serveForEach();

async function openDemo({ page }: Person): Promise<void> {
  await button(page, "Open the demo").click();
  await page.getByRole("heading", { name: "Trials" }).waitFor();
  await page.locator("article h2 a").first().click();
  await page.locator("figure svg").first().waitFor();
  await page.getByText(/A first look/).waitFor({ state: "detached", timeout: 60_000 });
}

/** Cuts down, runs across: two blades, two runs each, one reading mistyped. */
const tally = [
  ["blade", "A", "", "B", ""],
  ["medium", "sisal rope", "", "", ""],
  ["run", "1", "2", "1", "2"],
  ["unit", "gf", "", "", ""],
  ["cuts", "", "", "", ""],
  ["0", "104", "l01", "101", "99"],
  ["1", "118", "121", "105", "107"],
  ["3", "139", "133", "112", "110"],
  ["7", "171", "166", "124", "121"],
  ["15", "219", "226", "141", "139"],
  ["31", "312", "301", "166", "171"],
  ["63", "446", "460", "205", "214"],
];
const cell = (page: Page, row: number, column: number) =>
  page.locator(`[data-cell="${row}:${column}"]`);

describe.each([
  ["a desktop", desktop],
  ["a phone", phone],
])("on %s", (_size, size) => {
  test("from the first screen to the demo's answer, asked otherwise, struck, undone, told", async () => {
    const person = await sitDown(browser, app.address, size);
    const { page } = person;
    if (size === desktop) expect(await faults(page)).toEqual([]);
    await openDemo(person);
    await expect.poll(() => headline(page).textContent()).toMatch(/times as long|practically/);
    expect(await faults(page)).toEqual([]);

    const margin = page.getByRole("textbox", { name: "Worth-it margin" });
    const terms = page.getByText(/Worth having means/).first();
    await margin.fill("4");
    await expect.poll(() => terms.textContent()).toContain("4 times");
    const worthHaving = page.locator(".told .settled", { hasText: /worth having/ });
    await expect.poll(() => worthHaving.count()).toBe(0);

    await page.locator("summary", { hasText: /runs$/ }).first().click();
    await button(page, /, run /)
      .first()
      .click();
    const reading = page.getByRole("button", { name: /strike out$/ }).first();
    const struck = (await reading.textContent())?.trim();
    await reading.click();
    await page.getByLabel("Why does it not count?").fill("the thread slipped");
    await button(page, "Strike it out").click();
    await expect.poll(() => page.locator("s").first().textContent()).toBe(struck);
    await button(page, "Undo this").click();
    await page.locator("s").waitFor({ state: "detached" });

    await inMargin(page, /Tell/).click();
    const [download] = await Promise.all([
      page.waitForEvent("download", { timeout: 90_000 }),
      button(page, "The report").click(),
    ]);
    const report = readFileSync(await download.path(), "utf8");
    expect(download.suggestedFilename()).toMatch(/^[a-z-]+\.html$/);
    expect(report).toContain("times as long");
    expect(person.complaints).toEqual([]);
  });

  test("from an empty notebook to a verdict on a table that was typed, a mistake mended", async () => {
    const person = await sitDown(browser, app.address, size);
    const { page } = person;
    await page.getByLabel("What the notebook is called").fill("rope");
    await button(page, "Make a notebook").click();
    await page.getByRole("heading", { name: "No trials yet" }).waitFor();
    await page.getByRole("link", { name: "Type in a tally sheet" }).click();
    await button(page, "I have read this").click();

    for (const [row, cells] of tally.entries()) {
      for (const [column, text] of cells.entries()) {
        if (column > 0 && text) await cell(page, row, column).fill(text);
      }
    }
    const mistake = cell(page, 5, 2);
    await expect.poll(() => mistake.getAttribute("aria-invalid")).toBe("true");
    expect(await faults(page)).toEqual([]);
    await page.locator(".problems button").first().click();
    await expect.poll(() => mistake.evaluate((it) => it === document.activeElement)).toBe(true);
    await mistake.fill("101");
    await expect.poll(() => mistake.getAttribute("aria-invalid")).toBe(null);
    await page.getByLabel("What the trial is called").fill("Rope in autumn");
    await expect.poll(() => button(page, "Take it in").isEnabled()).toBe(true);
    await button(page, "Take it in").click();

    await page.getByRole("heading", { name: "Judge: Rope in autumn" }).waitFor();
    await expect.poll(() => headline(page).textContent()).toMatch(/\bB\b.*\bA\b|\bA\b.*\bB\b/);
    expect(person.complaints).toEqual([]);
  });
});

test("by the keyboard alone: a notebook, a sheet that is typed, a verdict, a run of it", async () => {
  const { page } = await sitDown(browser, app.address);
  await page.getByRole("heading", { level: 1 }).waitFor();
  await tabTo(page, "input", /notebook is called/);
  await page.keyboard.type("keys");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "No trials yet" }).waitFor();
  await tabTo(page, "a", /tally sheet/);
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Bring in a table" }).waitFor();

  await tabTo(page, "input", /^name of row 1$/);
  await page.keyboard.press("ArrowRight");
  for (const [row, cells] of tally.entries()) {
    for (const text of cells.slice(1)) {
      await page.keyboard.type(text.replace("l", "1"));
      await page.keyboard.press("ArrowRight");
    }
    await page.keyboard.press("Control+ArrowLeft");
    if (row < tally.length - 1) await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowRight");
  }
  await expect.poll(() => button(page, "Take it in").isEnabled()).toBe(true);
  await tabTo(page, "input", /trial is called/);
  await page.keyboard.type("Rope");
  await page.keyboard.press("Enter");

  await page.getByRole("heading", { name: "Judge: Rope" }).waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe("H1");
  await page.locator("figure svg").first().waitFor();
  await tabTo(page, "summary", /runs/);
  await page.keyboard.press("Enter");
  await tabTo(page, "button", /run 1/);
  await page.keyboard.press("Enter");
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.textContent))
    .toMatch(/run 1/);
});

test("every other screen bars nobody and says what to do", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await openDemo(person);
  const trial = new URL(page.url()).pathname.replace(/judge$/, "");
  const screens = [
    "/",
    "/kit",
    "/journal",
    "/search?text=A",
    `${trial}ask`,
    `${trial}plan`,
    `${trial}tell`,
  ];
  for (const path of screens) {
    await page.goto(new URL(path, app.address).href);
    await page.getByRole("heading", { level: 1 }).waitFor();
    await expect.poll(() => page.getByText("…", { exact: false }).count()).toBeLessThan(4);
    expect(await faults(page), path).toEqual([]);
  }
  expect(person.complaints).toEqual([]);
});

test("another layout begins anew, and what was typed comes back at a press", async () => {
  const { page } = await sitDown(browser, app.address);
  await page.getByLabel("What the notebook is called").fill("rope");
  await button(page, "Make a notebook").click();
  await page.getByRole("link", { name: "Type in a tally sheet" }).click();
  await cell(page, 5, 1).fill("104");

  await page.getByLabel("Layout").selectOption("long");
  expect(await cell(page, 1, 0).inputValue()).toBe("");
  await button(page, "Have what was typed back").click();

  expect(await cell(page, 5, 1).inputValue()).toBe("104");
  expect(await page.getByLabel("Layout").inputValue()).toBe("wide");
  expect(await button(page, "Have what was typed back").count()).toBe(0);
});

test("where a file cannot be taken in as it is, what may be said of it stands open", async () => {
  const { page } = await sitDown(browser, app.address);
  await page.getByLabel("What the notebook is called").fill("rope");
  await button(page, "Make a notebook").click();
  await page.getByRole("link", { name: "Type in a tally sheet" }).click();
  const rows = ["knife,stuff,go,strokes,sharp", "A,rope,1,0,104", "A,rope,1,10,150"];
  await page
    .locator("input[type=file]")
    .first()
    .setInputFiles({
      name: "odd.csv",
      mimeType: "text/csv",
      buffer: Buffer.from(`${rows.join("\n")}\n`),
    });

  await page.getByLabel("Rows that name no kind of reading are").waitFor();
  expect(await faults(page)).toEqual([]);
});

test("a link is returned to, and going back leads where one was", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await openDemo(person);
  const judged = page.url();
  await inMargin(page, "Journal").click();
  await page.getByRole("heading", { name: "Journal" }).waitFor();
  await page.goBack();
  await page.getByRole("heading", { name: /^Judge/ }).waitFor();

  const again = await person.page.context().newPage();
  await again.goto(judged);
  await again.getByRole("heading", { name: /^Judge/ }).waitFor();
  expect(new URL(judged).hash).toBe("");
});

test("with another's key a page says which Keenfall it belonged to", async () => {
  const { page } = await sitDown(browser, app.address.replace(/#.*/, "#key=another"));

  await page.getByRole("heading", { name: /belongs to a Keenfall that was stopped/ }).waitFor();
  expect(await faults(page)).toEqual([]);
});

test("where the program is gone that is said, and what was typed is still there", async () => {
  const { page } = await sitDown(browser, app.address);
  await page.getByLabel("What the notebook is called").fill("rope");
  await button(page, "Make a notebook").click();
  await page.getByRole("link", { name: "Type in a tally sheet" }).click();
  await cell(page, 5, 1).fill("104");

  expect(await app.stop()).toBe(true);
  await cell(page, 6, 1).fill("131");

  await page.getByText("Keenfall does not answer; what you typed is still here").waitFor();
  expect(await cell(page, 5, 1).inputValue()).toBe("104");
});

test("the first load is under 300 kB", async () => {
  const sent: number[] = [];
  const context = await browser.newContext();
  const page = await context.newPage();
  const transport = await context.newCDPSession(page);
  await transport.send("Network.enable");
  transport.on("Network.loadingFinished", ({ encodedDataLength }) => sent.push(encodedDataLength));
  await page.goto(app.address);
  await page.getByRole("heading", { level: 1 }).waitFor();

  const whole = sent.reduce((sum, bytes) => sum + bytes, 0);
  expect(sent.length).toBeGreaterThan(2);
  expect(whole).toBeLessThan(300_000);
});
