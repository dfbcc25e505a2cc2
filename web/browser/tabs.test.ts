// Two tabs on one Keenfall: the second opens another notebook, or changes the same.

import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import type { Kit, Trial } from "../src/wire/api";
import { askApi, button, desktop, faults, inMargin, phone, sitDown } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";

serveForEach();

async function makeNotebook(page: Page, name: string): Promise<void> {
  await page.getByLabel(/notebook is called/).fill(name);
  await button(page, "Make a notebook").click();
  await page.getByRole("heading", { name: "No trials yet" }).waitFor();
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
  await page.getByRole("heading", { name: "No trials yet" }).waitFor();
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

/** Two tabs with the form of the same blade, of which the second keeps its steel first. */
async function bladeChangedElsewhere(size = desktop): Promise<Page> {
  const { page } = await sitDown(browser, app.address, size);
  await makeNotebook(page, "first");
  await askApi(app, "POST", "/kit/blades", { name: "Bench knife" });
  const other = await page.context().newPage();
  for (const tab of [page, other]) {
    await tab.goto(new URL("/kit", app.address).href);
    await button(tab, "Change Bench knife").click();
  }
  await shelf(other)
    .getByLabel(/^Steel/)
    .fill("X90CrMoV18");
  await button(other, "Keep it").click();
  await shelf(other).getByText("X90CrMoV18").first().waitFor();
  await shelf(page)
    .getByLabel(/^Steel/)
    .fill("X46Cr13");
  await button(page, "Keep it").click();
  await page
    .getByText("The blade Bench knife was changed elsewhere meanwhile. It is now: X90CrMoV18.")
    .waitFor();
  return page;
}
const steel = async () => (await askApi<Kit>(app, "GET", "/kit")).blades[0]?.steel;
const typedSteel = (page: Page) =>
  shelf(page)
    .getByLabel(/^Steel/)
    .inputValue();

describe.each([
  ["on a desktop", desktop],
  ["on a phone", phone],
])("A blade that another tab changed %s", (_where, size) => {
  test("is not written over, and what was typed stays", async () => {
    const page = await bladeChangedElsewhere(size);

    expect(await steel()).toBe("X90CrMoV18");
    expect(await typedSteel(page)).toBe("X46Cr13");
    expect(await faults(page)).toEqual([]);
  });
});

test("A blade that another tab changed is gone on with, and the own taken up again", async () => {
  const page = await bladeChangedElsewhere();

  await button(page, "Go on with the other").click();
  expect(await typedSteel(page)).toBe("X90CrMoV18");
  await button(page, "Take it up again").click();
  expect(await typedSteel(page)).toBe("X46Cr13");
  await button(page, "Keep it").click();

  await expect.poll(steel).toBe("X46Cr13");
});

test("A blade that another tab changed is kept as it was typed here by whoever says so", async () => {
  const page = await bladeChangedElsewhere();

  await button(page, "Keep this one in its place").click();

  await expect.poll(steel).toBe("X46Cr13");
});

test("A blade that another tab took away is put in anew", async () => {
  const { page } = await sitDown(browser, app.address);
  await makeNotebook(page, "first");
  const { blades: kept } = await askApi<Kit>(app, "POST", "/kit/blades", { name: "Bench knife" });
  await page.goto(new URL("/kit", app.address).href);
  await button(page, "Change Bench knife").click();
  await shelf(page)
    .getByLabel(/^Steel/)
    .fill("X46Cr13");
  await askApi(app, "DELETE", `/kit/blades/${kept[0]?.uid}?revision=${kept[0]?.revision}`);

  await button(page, "Keep it").click();
  await page.getByText("Somebody took it out of the kit meanwhile").waitFor();
  expect(await typedSteel(page)).toBe("X46Cr13");
  await button(page, "Keep it").click();

  await expect.poll(steel).toBe("X46Cr13");
});

test("A question that another tab wrote down is not written over", async () => {
  const { page } = await sitDown(browser, app.address);
  await makeNotebook(page, "first");
  const trial = await askApi<Trial>(app, "POST", "/trials", { name: "Rope" });
  const asking = new URL(`/trials/${trial.uid}/ask`, app.address).href;
  const other = await page.context().newPage();
  for (const tab of [page, other]) {
    await tab.goto(asking);
    await tab.getByRole("heading", { name: "Ask: Rope" }).waitFor();
  }
  const write = async (tab: Page, second: string) => {
    await tab.getByLabel("blade 1", { exact: true }).fill("A");
    await tab.getByLabel("blade 2", { exact: true }).fill(second);
    await tab.getByLabel("medium 1", { exact: true }).fill("rope");
    await button(tab, "Write it down and plan").click();
  };
  const planned = async () => {
    const { asked } = await askApi<Trial>(app, "GET", `/trials/${trial.uid}`);
    return asked?.plan?.arms.map(({ blade }) => blade);
  };
  await write(other, "B");
  await other.getByRole("heading", { name: "Plan: Rope" }).waitFor();
  await write(page, "C");

  await page.getByText("What is asked and planned in Rope was changed elsewhere").waitFor();
  expect(await planned()).toEqual(["A", "B"]);
  expect(await faults(page)).toEqual([]);
  await button(page, "Keep this one in its place").click();
  await page.getByRole("heading", { name: "Plan: Rope" }).waitFor();
  expect(await planned()).toEqual(["A", "C"]);
});

test("the address without its key, then the whole one in the same tab", async () => {
  const { origin } = new URL(app.address);
  const { page } = await sitDown(browser, origin);
  await page.getByRole("heading", { name: "The end of the address is missing" }).waitFor();

  await page.goto(`${origin}/${new URL(app.address).hash}`);
  await page.getByLabel("What the notebook is called").waitFor();
});
