// The kit as a person keeps it: put in, looked up, refused, corrected with a reason, undone.

import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import type { Kit } from "../src/wire/api";
import { askApi, button, desktop, faults, inMargin, phone, sitDown, tabTo } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";

serveForEach();

async function beginNotebook(page: Page): Promise<void> {
  await page.getByLabel(/notebook is called/).fill("bench");
  await button(page, "Make a notebook").click();
  await page.getByRole("heading", { name: "No trials yet" }).waitFor();
}
async function openKit(page: Page): Promise<void> {
  await inMargin(page, "Kit").click();
  await page.getByRole("heading", { name: "Blades" }).waitFor();
}
const shelf = (page: Page, name: string) => page.getByRole("region", { name, exact: true });
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent?.trim());

const longName = `The knife that hung beside the door until ${"spring".repeat(20)}`;

/** One of each, every text of which would be script if it were not text. */
const script = "<img src=x onerror=alert(1)>";
const shelves: [string, { [label: string]: string }][] = [
  ["Blades", { Name: script, Steel: script, Hardness: "58,5", Specimens: script }],
  ["Edges", { Name: script, Bevel: "15", Finish: script, Note: script }],
  ["Media", { Name: script, Condition: script }],
  ["Lots of a medium", { Medium: script, Lot: script, Condition: script, Length: "25" }],
  ["Threads, cords and cards", { Name: script, Lot: script }],
  ["Kinds of reading", { "Name in tables": script, "Name in sentences": script, Unit: script }],
  ["Stones, plates and wheels", { Name: script, Abrasive: script, Grit: script, Note: script }],
];

describe.each([
  ["on a desktop", desktop],
  ["on a phone", phone],
])("the kit %s", (_where, size) => {
  test("bars nobody: empty, being typed, with long names", async () => {
    const { page, complaints } = await sitDown(browser, app.address, size);
    await beginNotebook(page);
    await openKit(page);
    expect(await faults(page)).toEqual([]);

    const blades = shelf(page, "Blades");
    await button(page, "Add a blade").click();
    await blades.getByLabel("Name").fill(longName);
    await blades.getByLabel(/^Steel/).fill("X90CrMoV18");
    await blades.locator(".hint", { hasText: "C 0.85 to 0.95 %" }).waitFor();
    expect(await faults(page)).toEqual([]);
    await button(page, "Keep it").click();

    await blades.getByText(longName).first().waitFor();
    expect(await faults(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });
});

test("every shelf keeps what is typed, and shows it as the text it is", async () => {
  const { page, complaints } = await sitDown(browser, app.address);
  await beginNotebook(page);
  await openKit(page);
  for (const [name, typed] of shelves) {
    const one = shelf(page, name);
    await one.getByRole("button", { name: /^Add/ }).click();
    for (const [label, text] of Object.entries(typed)) {
      await one.getByLabel(new RegExp(`^${label}`)).fill(text);
    }
    await button(page, "Keep it").click();
    await one.locator("li", { hasText: script }).waitFor();
    expect(await one.locator("img").count(), name).toBe(0);
  }
  await expect.poll(() => shelf(page, "Blades").textContent()).toContain("58.5 HRC");
  expect(complaints).toEqual([]);
});

test("a thing with a field that is marked wrong is not kept: the field is come to, and said", async () => {
  const { page } = await sitDown(browser, app.address);
  await beginNotebook(page);
  await openKit(page);
  const blades = shelf(page, "Blades");
  await button(page, "Add a blade").click();
  await blades.getByLabel("Name").fill("Gyuto");
  const hardness = blades.getByLabel(/^Hardness/);
  await hardness.fill("hard");
  await button(page, "Keep it").click();

  await blades.getByText(/Nothing is kept yet: “Hardness, HRC” cannot be “hard”/).waitFor();
  expect(await hardness.evaluate((field) => field === document.activeElement)).toBe(true);
  await hardness.fill("58 HRC");
  await button(page, "Keep it").click();
  await blades.locator("li", { hasText: "58 HRC" }).waitFor();

  const lots = shelf(page, "Lots of a medium");
  await button(page, "Add a lot").click();
  await lots.getByLabel("Medium").fill("rope");
  await lots.getByLabel("Lot").fill("roll 1");
  await button(page, "Keep it").click();
  const lot = lots.locator("li", { hasText: "roll 1" });
  await lot.waitFor();
  expect(await lot.textContent()).not.toContain("false");
});

test("a hardness is typed as a range or with its error, and one off the scale is refused", async () => {
  const { page, complaints } = await sitDown(browser, app.address);
  await beginNotebook(page);
  await openKit(page);
  const blades = shelf(page, "Blades");
  await button(page, "Add a blade").click();
  await blades.getByLabel("Name (needed)").fill("Gyuto");
  await blades.getByLabel(/^Steel/).fill("X46Cr31");
  const hardness = blades.getByLabel(/^Hardness/);
  await hardness.fill("58-60");
  await blades.getByText("Taken as 59, plus or minus 1.").waitFor();
  const error = blades.getByLabel(/^Plus or minus/);
  expect(await error.inputValue()).toBe("1");
  await error.fill("±1.5");
  await hardness.fill("200");
  await button(page, "Keep it").click();
  await blades.getByText("The hardness of Gyuto is 200 HRC, and the C scale goes").waitFor();
  expect(await faults(page)).toEqual([]);

  await hardness.fill("59");
  await button(page, "Keep it").click();
  const kept = blades.locator("li", { hasText: "59 ± 1.5 HRC" });
  await kept.getByText("The steel X46Cr31 is not in the table; nearest: X46Cr13").waitFor();
  expect(await faults(page)).toEqual([]);

  await button(page, "Add an edge").click();
  const edges = shelf(page, "Edges");
  await edges.getByLabel(/^Name/).fill("fine");
  await edges.getByLabel(/^Bevel/).fill("20");
  await edges.getByLabel(/^Micro-bevel/).fill("15");
  await button(page, "Keep it").click();
  await edges.getByText("below its bevel of 20°").waitFor();
  expect(complaints.filter((words) => !words.includes("400"))).toEqual([]);
});

test("what was typed and not kept says from when it is, and is forgotten when that is wanted", async () => {
  const { page } = await sitDown(browser, app.address);
  await beginNotebook(page);
  await openKit(page);
  const stones = shelf(page, "Stones, plates and wheels");
  await button(page, "Add a stone").click();
  await stones.getByLabel(/^Name/).fill("the coarse plate");
  await stones.getByLabel(/^Abrasive/).fill("diamond");
  await inMargin(page, "Journal").click();
  await openKit(page);
  await button(page, "Add a stone").click();
  await stones.getByText(/^Not kept yet: from today at \d\d:\d\d\./).waitFor();
  expect(await stones.getByLabel(/^Name/).inputValue()).toBe("the coarse plate");
  expect(await faults(page)).toEqual([]);

  await button(page, "Forget it").click();
  await stones.getByText(/^Not kept yet/).waitFor({ state: "detached" });
  expect(await stones.getByLabel(/^Name/).inputValue()).toBe("");
  expect(await stones.getByLabel(/^Name/).evaluate((at) => at === document.activeElement)).toBe(
    true,
  );
  await inMargin(page, "Journal").click();
  await openKit(page);
  await button(page, "Add a stone").click();
  expect(await stones.getByText(/^Not kept yet/).count()).toBe(0);
});

test("what was done is said at the foot, goes by itself once it was read, and not while it is used", async () => {
  const { page } = await sitDown(browser, app.address);
  await page.clock.install();
  await beginNotebook(page);
  await openKit(page);
  await button(page, "Add a stone").click();
  await page.getByLabel(/^Name/).last().fill("plate");
  await button(page, "Keep it").click();
  const notice = page.getByRole("status").filter({ hasText: "The stone plate is in the kit." });
  await notice.waitFor();
  const heading = await page.getByRole("heading", { level: 1 }).boundingBox();
  const box = await notice.boundingBox();
  expect(box?.y).toBeGreaterThan((heading?.y ?? 0) + (heading?.height ?? 0));

  await page.mouse.move(5, 5);
  await button(page, "Put away").focus();
  await page.clock.runFor(30_000);
  expect(await notice.count()).toBe(1);
  await page.getByRole("link", { name: "Kit" }).first().focus();
  await page.clock.runFor(9_000);
  expect(await notice.count()).toBe(1);
  await page.clock.runFor(2_000);
  await notice.waitFor({ state: "detached" });
  await button(page, /^Undo/).first().waitFor();
});

test("by the keyboard alone: a stone is refused, kept, taken away and had back", async () => {
  const { page } = await sitDown(browser, app.address);
  await beginNotebook(page);
  await openKit(page);
  const stones = shelf(page, "Stones, plates and wheels");

  await tabTo(page, "button", /^Add a stone/);
  await page.keyboard.press("Enter");
  await page.keyboard.type("the coarse plate");
  await tabTo(page, "input", /^Grit/);
  await page.keyboard.type("1000");
  await page.keyboard.press("Enter");
  await stones.getByText(/does not say its system/).waitFor();
  expect(await stones.getByLabel("Name").inputValue()).toBe("the coarse plate");

  await page.keyboard.press("Control+a");
  await page.keyboard.type("FEPA-F 220");
  await page.keyboard.press("Enter");
  await stones.locator("li", { hasText: "the coarse plate" }).waitFor();
  await expect.poll(() => focused(page)).toMatch(/^Add another stone/);

  await page.keyboard.press("Shift+Tab");
  expect(await focused(page)).toMatch(/^Take away/);
  await page.keyboard.press("Enter");
  await stones.getByText("No stone yet.", { exact: false }).waitFor();
  await expect.poll(() => focused(page)).toMatch(/^Add a stone/);

  await button(page, /^Undo/).first().click();
  await stones.locator("li", { hasText: "the coarse plate" }).waitFor();
});

test("what a trial rests on stays, and is corrected with a reason that the journal keeps", async () => {
  const { page } = await sitDown(browser, app.address);
  await button(page, "Open the demo").click();
  await page.getByRole("heading", { name: "Trials" }).waitFor();
  await openKit(page);
  const blades = shelf(page, "Blades");
  const first = blades.locator("li").first();

  await first.getByRole("button", { name: /^Take away/ }).click();
  await first.getByText(/rests on it/).waitFor();

  await first.getByRole("button", { name: /^Change/ }).click();
  await blades.getByLabel(/^Steel/).fill("X46Cr13");
  await button(page, "Keep it").click();
  await blades.getByText(/can be corrected with a reason/).waitFor();
  await blades.getByLabel(/^Why/).fill("the mill sheet was another’s");
  await button(page, "Keep it").click();
  await expect.poll(() => first.textContent()).toContain("X46Cr13");
  await expect.poll(() => focused(page)).toMatch(/^Change/);

  await inMargin(page, "Journal").click();
  await page.getByText("the mill sheet was another’s").waitFor();
});

test("why an entry of the journal cannot be undone stands at that entry", async () => {
  const { page } = await sitDown(browser, app.address);
  await beginNotebook(page);
  await askApi(app, "POST", "/kit/blades", { name: "Gyuto" });
  const { blades } = await askApi<Kit>(app, "GET", "/kit");
  const [blade] = blades;
  await askApi(app, "PUT", `/kit/blades/${blade?.uid}`, {
    thing: { ...blade, name: "Petty" },
    why: "",
  });
  await inMargin(page, "Journal").click();
  const entries = page.locator("main ol > li");
  await entries.nth(1).waitFor();
  const first = entries.last();
  await first.getByRole("button", { name: /^Undo/ }).click();

  await first.getByRole("alert").waitFor();
  expect(await page.getByRole("main").getByRole("alert").count()).toBe(1);
});
