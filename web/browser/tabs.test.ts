// Two tabs on one Keenfall: the second opens another notebook, or changes the same.

import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { Kit } from "../src/wire/api";
import {
  askApi,
  button,
  desktop,
  faults,
  inMargin,
  phone,
  type ServedApp,
  serveApp,
  sitDown,
} from "./app_opened";
import { startBrowser } from "./opened";

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());
beforeEach(async () => {
  app = await serveApp();
});
afterEach(async () => {
  for (const context of browser.contexts()) await context.close();
  await app.stop();
});

async function makeNotebook(page: Page, name: string): Promise<void> {
  await page.getByLabel(/notebook is called/).fill(name);
  await button(page, "Make a notebook").click();
  await page.getByRole("heading", { name: "An empty notebook" }).waitFor();
}
const blades = async () => (await askApi<Kit>(app, "GET", "/kit")).blades.map((b) => b.name);
const shelf = (page: Page) => page.getByRole("region", { name: "Blades", exact: true });
const strip = (page: Page) => page.getByText("Another notebook is open in Keenfall now").first();

/** A page on which a blade is typed for first.keen, while another tab opens second.keen. */
async function typedWhileAnotherIsOpened(size = desktop) {
  const { page } = await sitDown(browser, app.address, size);
  await makeNotebook(page, "first");
  await inMargin(page, "Kit").click();
  await button(page, "Add a blade").click();
  await shelf(page).getByLabel(/^Name/).fill("Bench knife");

  const other = await page.context().newPage();
  await other.goto(`${new URL(app.address).origin}/start`);
  await makeNotebook(other, "second");
  await button(page, "Keep it").click();
  await strip(page).waitFor();
  return page;
}

describe.each([
  ["on a desktop", desktop],
  ["on a phone", phone],
])("What is typed for a notebook %s", (_where, size) => {
  test("does not come into another, and stays on the page", async () => {
    const page = await typedWhileAnotherIsOpened(size);

    expect(await blades()).toEqual([]);
    expect(await page.getByText("This page is about first.keen").count()).toBe(1);
    expect(await shelf(page).getByLabel(/^Name/).inputValue()).toBe("Bench knife");
    expect(await faults(page)).toEqual([]);
  });
});

test("The one that is open now can be looked at", async () => {
  const page = await typedWhileAnotherIsOpened();

  await button(page, "Look at what is open").click();

  await inMargin(page, "second.keen").waitFor();
  await page.getByRole("heading", { name: "An empty notebook" }).waitFor();
  expect(await strip(page).count()).toBe(0);
});

test("The one before can be opened again, and what was typed comes into it", async () => {
  const page = await typedWhileAnotherIsOpened();

  await button(page, "Open first.keen again").click();
  await expect.poll(() => strip(page).count()).toBe(0);
  await button(page, "Keep it").click();

  await expect.poll(blades).toEqual(["Bench knife"]);
  await inMargin(page, "first.keen").waitFor();
});

test("Undo takes back what it shows, not what another tab did since", async () => {
  const { page } = await sitDown(browser, app.address);
  await makeNotebook(page, "first");
  await inMargin(page, "Kit").click();
  await button(page, "Add a blade").click();
  await shelf(page).getByLabel(/^Name/).fill("Bench knife");
  await button(page, "Keep it").click();
  await page.locator("#would-undo", { hasText: "Bench knife" }).waitFor();

  await askApi(app, "POST", "/kit/blades", { name: "Rope knife" });
  await button(page, "Undo").last().click();

  await expect.poll(blades).toEqual(["Rope knife"]);
});

test("the address without its key, then the whole one in the same tab", async () => {
  const { origin } = new URL(app.address);
  const { page } = await sitDown(browser, origin);
  await page.getByRole("heading", { name: "The end of the address is missing" }).waitFor();

  await page.goto(`${origin}/${new URL(app.address).hash}`);
  await page.getByLabel("What the notebook is called").waitFor();
});
