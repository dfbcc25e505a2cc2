// What was taken in with a slip is corrected: a reading where it is pressed, a table by taking it back
// into the sheet.

import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { button, desktop, faults, phone, sitDown } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";

serveForEach();

const cell = (page: Page, row: number, column = 1) =>
  page.locator(`[data-cell="${row}:${column}"]`);

async function takeIn(page: Page): Promise<void> {
  await expect.poll(() => button(page, "Take it in").isEnabled()).toBe(true);
  await button(page, "Take it in").click();
  await page.getByRole("heading", { name: "Judge: Rope" }).waitFor();
}

test.each([
  ["at a desk", desktop],
  ["on a phone", phone],
])("the blade's name of a new trial, %s", async (_where, size) => {
  const { page, complaints } = await sitDown(browser, app.address, size);
  await page.getByLabel("What the notebook is called").fill("rope");
  await button(page, "Make a notebook").click();
  await page.getByRole("link", { name: "Type in a tally sheet" }).click();
  const typed = ["Gyuot", "rope", "1", "gf", "", "104", "131"];
  for (const [row, text] of typed.entries()) if (text) await cell(page, row).fill(text);
  await page.getByLabel("What the trial is called").fill("Rope");
  await takeIn(page);

  await page.goto(new URL("/journal", app.address).href);
  await button(page, /^Take back and correct/).waitFor();
  expect(await faults(page)).toEqual([]);
  await button(page, /^Take back and correct/).click();

  await page.getByRole("heading", { name: "Bring in a table" }).waitFor();
  await expect.poll(() => cell(page, 0).inputValue()).toBe("Gyuot");
  expect(await page.getByLabel("What the trial is called").inputValue()).toBe("Rope");
  await cell(page, 0).fill("Gyuto");
  await takeIn(page);
  expect(await page.locator("main").textContent()).not.toContain("Gyuot");
  expect(complaints).toEqual([]);
});

test.each([
  ["at a desk", desktop],
  ["on a phone", phone],
])("a reading that is pressed, and undone as a whole, %s", async (_where, size) => {
  const { page, complaints } = await sitDown(browser, app.address, size);
  await button(page, "Open the demo").click();
  await page.locator("article h2 a").first().click();
  await page.locator("figure svg").first().waitFor();
  await page.getByText(/A first look/).waitFor({ state: "detached", timeout: 60_000 });
  await page.locator("summary", { hasText: /runs$/ }).first().click();
  await button(page, /, run /)
    .first()
    .click();
  const reading = page.getByRole("button", { name: /correct or strike out$/ }).first();
  const struck = (await reading.textContent())?.trim();
  await reading.click();
  const instead = page.getByLabel(/^What it should be/);
  await instead.fill("l40");
  await page.getByLabel("Why is it corrected?").fill("digits swapped");
  expect(await button(page, "Correct it").isDisabled()).toBe(true);
  await instead.fill("140");
  expect(await faults(page)).toEqual([]);
  await button(page, "Correct it").click();

  await expect.poll(() => page.locator("s").first().textContent()).toBe(struck);
  await page.getByRole("button", { name: /^140 .*gf, after 0 cuts/ }).waitFor();
  await page.getByText(/^Done: correct .* gf to 140 gf at 0 in/).waitFor();
  await button(page, "Undo this").click();
  await page.locator("s").waitFor({ state: "detached" });
  expect(await page.getByRole("button", { name: /^140 .*gf, after 0 cuts/ }).count()).toBe(0);
  expect(complaints).toEqual([]);
});
