// A sheet that is typed in one browser is there in another, and two that type at once do not write
// over each other unseen.

import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import type { TypedSheet } from "../src/wire/api";
import { askApi, button, faults, phone, sitDown } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";

serveForEach();

const cell = (page: Page, row: number, column: number) =>
  page.locator(`[data-cell="${row}:${column}"]`);
const kept = () => askApi<TypedSheet>(app, "GET", "/sheets/new");
const meanwhile = (page: Page) => page.getByText("typed into elsewhere meanwhile");

async function atTheSheet(page: Page): Promise<void> {
  await page.goto(new URL("/enter", app.address).href);
  await page.getByRole("heading", { name: "Bring in a table" }).waitFor();
}

async function typedByOne(): Promise<Page> {
  const { page } = await sitDown(browser, app.address);
  await page.getByLabel("What the notebook is called").fill("rope");
  await button(page, "Make a notebook").click();
  await page.getByRole("link", { name: "Type in a tally sheet" }).click();
  await cell(page, 5, 1).fill("104");
  await expect.poll(async () => (await kept()).cells?.[5]?.[1]).toBe("104");
  return page;
}

test("what was typed is there in another browser, and goes when it is taken in", async () => {
  const one = await typedByOne();
  await one.context().close();

  const { page } = await sitDown(browser, app.address, phone);
  await atTheSheet(page);
  await expect.poll(() => cell(page, 5, 1).inputValue()).toBe("104");
  const rows = { 0: "A", 1: "rope", 2: "1", 6: "131" };
  for (const [row, text] of Object.entries(rows)) await cell(page, Number(row), 1).fill(text);
  await button(page, "Take it in").click();
  await page.getByRole("heading", { name: /^Judge/ }).waitFor();

  await expect.poll(async () => (await kept()).cells).toBeUndefined();
});

test("of two that type at once the second is asked which one holds", async () => {
  const one = await typedByOne();
  const { page } = await sitDown(browser, app.address);
  await atTheSheet(page);
  await expect.poll(() => cell(page, 5, 1).inputValue()).toBe("104");

  await cell(one, 6, 1).fill("118");
  await expect.poll(async () => (await kept()).cells?.[6]?.[1]).toBe("118");
  await cell(page, 7, 1).fill("139");

  await meanwhile(page).waitFor();
  expect(await faults(page)).toEqual([]);
  expect((await kept()).cells?.[6]?.[1]).toBe("118");
  await button(page, "Go on with the other").click();
  await expect.poll(() => cell(page, 6, 1).inputValue()).toBe("118");
  expect(await cell(page, 7, 1).inputValue()).toBe("");
  await button(page, "Undo typing").click();
  expect(await cell(page, 7, 1).inputValue()).toBe("139");
  await expect.poll(async () => (await kept()).cells?.[7]?.[1]).toBe("139");
});

test("what was taken in elsewhere is not brought back by whoever still holds it", async () => {
  const one = await typedByOne();
  await one.goto("about:blank");
  const { page } = await sitDown(browser, app.address);
  await atTheSheet(page);
  const rows = { 0: "A", 1: "rope", 2: "1", 6: "131" };
  for (const [row, text] of Object.entries(rows)) await cell(page, Number(row), 1).fill(text);
  const other = await page.context().newPage();
  await atTheSheet(other);
  await expect.poll(() => cell(other, 6, 1).inputValue()).toBe("131");
  await button(page, "Take it in").click();
  await page.getByRole("heading", { name: /^Judge/ }).waitFor();
  await expect.poll(async () => (await kept()).cells).toBeUndefined();

  await atTheSheet(one);
  await expect.poll(() => cell(one, 5, 1).inputValue()).toBe("");
  await cell(other, 7, 1).fill("150");
  await other.getByText("taken in elsewhere meanwhile").waitFor();
  expect(await faults(other)).toEqual([]);
  await button(other, "Begin the next one").click();
  await expect.poll(() => cell(other, 7, 1).inputValue()).toBe("");
});

test("what is kept in place of another's is kept", async () => {
  const one = await typedByOne();
  const { page } = await sitDown(browser, app.address);
  await atTheSheet(page);
  await expect.poll(() => cell(page, 5, 1).inputValue()).toBe("104");
  await cell(one, 6, 1).fill("118");
  await expect.poll(async () => (await kept()).cells?.[6]?.[1]).toBe("118");
  await cell(page, 7, 1).fill("139");

  await button(page, "Keep this one in its place").click();

  await expect.poll(async () => (await kept()).cells?.[7]?.[1]).toBe("139");
  await expect.poll(() => meanwhile(page).count()).toBe(0);
  await cell(one, 8, 1).fill("171");
  await meanwhile(one).waitFor();
});
