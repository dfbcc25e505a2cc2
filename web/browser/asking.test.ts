// Asking first, as a newcomer lives it: a question, a plan, the plan sealed, and what comes next.

import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import {
  askApi,
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
import { keenfall, writeTable } from "./opened";

serveForEach();

/** What is typed into, whether or not something is offered while it is. */
const field = (page: Page, name: string | RegExp) =>
  page.getByRole("textbox", { name }).or(page.getByRole("combobox", { name }));
const sealed = (page: Page) =>
  page.getByText(/^Sealed on \d+ \w+ \d{4} at \d\d:\d\d; cut next\.$/).last();
const named = (page: Page, name: string | RegExp) =>
  page.getByRole("heading", { level: 1, name }).waitFor();
const halfKeenness = (page: Page, medium: number) =>
  field(page, /^Half as keen after about/).nth(medium);
const takenForGranted = (page: Page) => page.locator("summary", { hasText: "taken for granted" });
const chances = (page: Page) =>
  page.getByRole("region", { name: "Chances of each verdict" }).getByRole("row");

/** A notebook, and a trial in it that begins with a question. */
async function beginTrial({ page }: Person, name: string): Promise<void> {
  await page.getByLabel("What the notebook is called").fill("bench");
  await button(page, "Make a notebook").click();
  await named(page, "No trials yet");
  await beginAnother({ page }, name);
}
async function beginAnother({ page }: Pick<Person, "page">, name: string): Promise<void> {
  await page.getByLabel("What the trial is called").fill(name);
  await button(page, "Ask first").click();
  await named(page, `Ask: ${name}`);
}

async function askOfTwoBlades({ page }: Person): Promise<void> {
  await page.getByLabel("blade 1", { exact: true }).fill("B");
  await page.getByLabel("blade 2", { exact: true }).fill("A");
  await page.getByLabel("medium 1", { exact: true }).fill("sisal rope");
  await page.getByLabel("Motion").selectOption("slice");
  await page.getByLabel("Parted by one cut").fill("25");
  await page.getByLabel("Worth-it margin").fill("2");
  await button(page, /^“Slicing sisal rope, B stays keen at least 2 times/).click();
}

async function writeItDown(page: Page): Promise<void> {
  await button(page, "Write it down and plan").click();
  await named(page, /^Plan: /);
}

describe.each([
  ["a desktop", desktop],
  ["a phone", phone],
])("on %s", (_size, size) => {
  test("from an empty notebook to a plan that is sealed, and what comes next", async () => {
    const person = await sitDown(browser, app.address, size);
    const { page } = person;
    await beginTrial(person, "Rope in autumn");
    expect(await faults(page)).toEqual([]);
    await askOfTwoBlades(person);
    await page.getByText("New: B, A.").waitFor();
    await writeItDown(page);

    await expect.poll(() => headline(page).textContent()).toMatch(/of \d+ such trials/i);
    expect(await faults(page)).toEqual([]);
    await field(page, /^Bevel angles/).fill("17");
    await field(page, /^Finish/).fill("9 µm diamond");
    await field(page, /^Every edge starts at/).fill("104");
    await field(page, /^Never press harder/).fill("60");
    await page.getByText("2 blades × 1 angle × 1 finish × 1 medium: 2 arms.").waitFor();
    await page.getByRole("heading", { name: "Block 6" }).waitFor();
    const before = await chances(page).allTextContents();
    expect(before.length).toBeGreaterThan(3);
    const cost = page.locator(".lead");
    const costBefore = await cost.textContent();

    await field(page, /^Runs of each arm/).fill("3");
    await page.getByRole("heading", { name: "Block 4" }).waitFor({ state: "detached" });
    await expect.poll(() => cost.textContent()).not.toBe(costBefore);
    await expect.poll(() => chances(page).allTextContents()).not.toEqual(before);
    await button(page, "Suggest checkpoints").click();
    await expect.poll(() => field(page, /^Read after so many cuts/).inputValue()).toMatch(/^0, 1/);
    await field(page, /^Read after so many cuts/).fill("0, 10, 20, 40, 80");

    await button(page, "Keep it as a draft").click();
    await page.getByText("What could be better about it").waitFor();
    await button(page, "Seal question and plan").click();
    await sealed(page).waitFor();
    await named(page, "Plan: Rope in autumn");
    await page.getByRole("main").getByText("Now sharpen, cut and read as planned").waitFor();
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("H1");
    expect(await faults(page)).toEqual([]);

    await inMargin(page, /Ask/).click();
    await page.getByRole("heading", { name: "What was asked" }).waitFor();
    await sealed(page).waitFor();
    expect(await page.locator("dl.facts > div").allInnerTexts()).toEqual([
      "Blades\nB, A",
      "In sisal rope\nslice, 25 mm parted by one cut",
    ]);
    expect(await faults(page)).toEqual([]);

    await inMargin(page, /bench/).click();
    await named(page, "Trials");
    const card = page.locator("article");
    await card.getByText(/Asked: Slicing sisal rope, B stays keen at least 2 times/).waitFor();
    await card.getByText("Now sharpen, cut and read as planned").waitFor();

    await card.getByRole("link", { name: "Rope in autumn" }).click();
    await named(page, "Enter: Rope in autumn");
    await page.locator('[data-cell="0:6"]').waitFor();
    await inMargin(page, /Plan/).click();
    await page.getByRole("heading", { name: "What was planned" }).waitFor();
    await page.getByText("read at 0, 10, 20, 40, 80 cuts").waitFor();
    expect(await button(page, "Seal question and plan").count()).toBe(0);
    expect(await faults(page)).toEqual([]);
    expect(person.complaints).toEqual([]);
  });

  test("the guided first trial: one's own repeatability, planned, sealed, cut and judged", async () => {
    const person = await sitDown(browser, app.address, size);
    const { page } = person;
    await beginTrial(person, "My own hand");
    await page.getByRole("link", { name: "Measure your own repeatability first" }).click();
    await page.getByLabel("One blade").fill("A");
    await page.getByLabel("One medium").fill("sisal rope");
    await button(page, "Plan it for me").click();

    await expect
      .poll(() => headline(page).textContent())
      .toBe("How much do your own runs scatter?");
    await page.getByText("1 blade × 1 medium: 1 arm.").waitFor();
    expect(await field(page, /could turn out wrong/).inputValue()).toContain("My runs of A");
    await page.getByRole("heading", { name: "Block 3" }).waitFor();
    expect(await faults(page)).toEqual([]);
    await button(page, "Seal question and plan").click();
    await page.getByRole("link", { name: "Enter what was read" }).click();
    await named(page, "Enter: My own hand");

    const rows = await page
      .locator("td:first-of-type input")
      .evaluateAll((labels) => labels.map((label) => (label as HTMLInputElement).value));
    const read = { "0": 104, "1": 118, "3": 131, "7": 155, "15": 190, "31": 245, "63": 330 };
    for (const [cuts, reading] of Object.entries(read)) {
      for (const run of [1, 2, 3]) {
        const cell = page.locator(`[data-cell="${rows.indexOf(cuts)}:${run}"]`);
        await cell.fill(String(Math.round(reading * (0.9 + 0.1 * run))));
      }
    }
    await expect.poll(() => button(page, "Take it in").isEnabled()).toBe(true);
    await button(page, "Take it in").click();
    await named(page, "Judge: My own hand");
    const said = page.getByText(/^Your runs of A scatter by \d+ %/);
    const percent = /by (\d+ %), a log sd of ([\d.]+)/.exec((await said.textContent()) ?? "");
    const otherwise = page
      .locator("h2", { hasText: "Done otherwise than planned" })
      .locator("+ ul");
    expect(await otherwise.locator("li").allTextContents()).toEqual([
      expect.stringMatching(/^In 3 of 3 runs fewer readings are recorded at a checkpoint than/),
    ]);

    // All is in: another run, said as in the plan.
    await inMargin(page, /Enter/).click();
    await page.getByText("In already: runs 1 to 3 of A on sisal rope.").waitFor();
    const further = await page
      .locator("td:first-of-type input")
      .evaluateAll((labels) => labels.map((label) => (label as HTMLInputElement).value));
    const at = (name: string) => page.locator(`[data-cell="${further.indexOf(name)}:1"]`);
    expect(await at("run").inputValue()).toBe("4");
    expect(await page.locator(".labelled thead th").allTextContents()).toEqual(["A", "B"]);
    await at("0").fill("abc");
    await expect.poll(() => at("0").getAttribute("aria-invalid")).toBe("true");
    expect(await faults(page)).toEqual([]);
    await at("0").fill("");

    await inMargin(page, /bench/).click();
    await named(page, "Trials");
    await beginAnother(person, "Two blades");
    await askOfTwoBlades(person);
    await writeItDown(page);
    await button(page, "Another medium").click();
    await page.getByLabel("medium 2", { exact: true }).fill("felt");
    await takenForGranted(page).click();
    const inRope = page.getByRole("group", { name: "Measured before, for runs in sisal rope" });
    const inFelt = page.getByRole("group", { name: "Measured before, for runs in felt" });
    await inFelt.getByText("another medium, so only the scatter is taken").waitFor();
    expect(await faults(page)).toEqual([]);
    await button(
      page,
      `Take ${percent?.[1]}, as measured in My own hand (A in sisal rope, 3 runs)`,
    ).click();
    expect(await field(page, /^Runs in felt scatter by/).inputValue()).toBe(percent?.[2]);
    expect(await halfKeenness(page, 1).inputValue()).toBe("");
    await inRope.getByText(/half as keen after about \d+ cuts/).waitFor();
    await inRope.getByRole("button", { name: `Take ${percent?.[1]}, as measured` }).focus();
    await page.keyboard.press("Enter");
    const scatter = field(page, /^Runs in sisal rope scatter by/);
    await expect.poll(() => scatter.inputValue()).toBe(percent?.[2]);
    expect(Number(await halfKeenness(page, 0).inputValue())).toBeGreaterThan(10);
    await inRope.getByText(/^Taken. Your runs of A scatter/).waitFor();
    await page.reload();
    await takenForGranted(page).click();
    expect(await scatter.inputValue()).toBe(percent?.[2]);

    await scatter.fill("");
    await page.reload();
    await takenForGranted(page).click();
    expect(await scatter.inputValue()).toBe("");
    expect(await faults(page)).toEqual([]);
    expect(person.complaints).toEqual([]);
  });
});

test("by the keyboard alone: a question, a plan, the plan sealed", async () => {
  const { page } = await sitDown(browser, app.address);
  await page.getByRole("heading", { level: 1 }).waitFor();
  await tabTo(page, "input", /notebook is called/);
  await page.keyboard.type("keys");
  await page.keyboard.press("Enter");
  await named(page, "No trials yet");
  await tabTo(page, "input", /trial is called/);
  await page.keyboard.type("Rope");
  await page.keyboard.press("Enter");
  await named(page, "Ask: Rope");
  await tabTo(page, "input", /^blade 1$/);
  await page.keyboard.type("B");
  await tabTo(page, "input", /^blade 2$/);
  await page.keyboard.type("A");
  await tabTo(page, "input", /^medium 1$/);
  await page.keyboard.type("rope");
  await tabTo(page, "button", /^“Slicing rope/);
  await page.keyboard.press("Enter");
  await tabTo(page, "button", /Write it down and plan/);
  await page.keyboard.press("Enter");

  await named(page, "Plan: Rope");
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe("H1");
  await page.getByRole("heading", { name: "Block 6" }).waitFor();
  await tabTo(page, "input", /^Bevel angles/);
  await page.keyboard.type("15, 20");
  await page.getByText("2 blades × 2 angles × 1 medium: 4 arms.").waitFor();
  await tabTo(page, "button", /^Seal question and plan$/);
  await page.keyboard.press("Enter");
  await sealed(page).waitFor();
  await tabTo(page, "a", /^Cut it at the bench$/);
});

test("a seal is taken back after all, until something was read, and the journal shows it", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await beginTrial(person, "Second thoughts");
  await askOfTwoBlades(person);
  await writeItDown(page);
  await page.getByRole("heading", { name: "Block 6" }).waitFor();
  await button(page, "Work it out by imagined trials").click();
  const workedOut = page.locator("caption", { hasText: "imagined trials for each line" });
  await workedOut.waitFor();
  const chancesBefore = await chances(page).allTextContents();
  await button(page, "Seal question and plan").click();
  await sealed(page).waitFor();
  await page.reload();
  await workedOut.waitFor();
  expect(await chances(page).allTextContents()).toEqual(chancesBefore);

  await button(page, "Change it after all").click();
  await page.getByText("Take the seal back? Question and plan are a draft again then").waitFor();
  expect(await faults(page)).toEqual([]);
  await button(page, "Leave it sealed").click();
  await button(page, "Change it after all").click();
  await button(page, "Take the seal back").click();
  await button(page, "Seal question and plan").waitFor();
  expect(await field(page, /could turn out wrong/).inputValue()).toContain("Slicing sisal rope");
  await inMargin(page, "Journal").click();
  const lines = page.locator("main ol .what");
  await lines.nth(3).waitFor();
  expect((await lines.allTextContents()).slice(0, 2)).toEqual([
    expect.stringMatching(/^undo: seal the plan of Second thoughts/),
    expect.stringMatching(/^seal the plan of Second thoughts/),
  ]);

  await page.goBack();
  await button(page, "Seal question and plan").click();
  await sealed(page).waitFor();
  const table = join(app.folder, "cut.csv");
  writeTable(table, [
    ["blade", "medium", "run", "cuts", "reading"],
    ["B", "sisal rope", "1", "0", "104"],
    ["B", "sisal rope", "1", "10", "130"],
  ]);
  keenfall("take", join(app.folder, "bench.keen"), table, "--trial=Second thoughts");
  await page.reload();
  await button(page, "Change it after all").click();
  await page.getByText("Something was read after the seal, and the seal stays").waitFor();
  expect(await button(page, "Take the seal back").count()).toBe(0);
  expect(await faults(page)).toEqual([]);
  expect(person.complaints).toEqual([]);
});

test("blades, angles, finishes and media are crossed in one place, or each blade has its own", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await beginTrial(person, "Crossed");
  await askOfTwoBlades(person);
  await writeItDown(page);
  await field(page, /^Bevel angles/).fill("15, 20");
  await field(page, /^Finish/).fill("9 µm diamond");
  await button(page, "Another finish to compare").click();
  await field(page, "Finish 2").fill("FEPA-F 220");
  await button(page, "Another medium").click();
  await page.getByLabel("medium 2", { exact: true }).fill("felt");

  await page.getByText("2 blades × 2 angles × 2 finishes × 2 media: 16 arms.").waitFor();
  await page.getByText("B (20° per side, FEPA-F 220) in felt").first().waitFor();
  expect(await faults(page)).toEqual([]);

  await page.getByLabel("best against best").check();
  await page
    .getByRole("group", { name: "Edge of A" })
    .getByLabel(/^Bevel/)
    .fill("12");
  await page.getByText("2 blades, each with its own edge × 2 media: 4 arms.").waitFor();
  await page.getByText("A (12° per side) in felt").first().waitFor();
  await button(page, "Keep it as a draft").click();
  await page.getByText("differ in their edges too").waitFor();

  await page.reload();
  await page.getByText("2 blades, each with its own edge × 2 media: 4 arms.").waitFor();
  expect(person.complaints).toEqual([]);
});

test("a trial that was cut without a plan is planned with its blades and media", async () => {
  const table = join(app.folder, "cut.csv");
  const rows = ["B", "A"].flatMap((blade) =>
    [1, 2].flatMap((run) =>
      [0, 10, 40].map((cuts) => [blade, "felt", `${run}`, `${cuts}`, `${100 + run + 3 * cuts}`]),
    ),
  );
  writeTable(table, [["blade", "medium", "run", "cuts", "reading"], ...rows]);
  keenfall("new", join(app.folder, "cut.keen"));
  keenfall("take", join(app.folder, "cut.keen"), table, "--trial=Felt");
  await askApi(app, "POST", "/notebooks", { how: "open", path: "cut.keen" });
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await page.getByRole("link", { name: "Felt", exact: true }).click();
  await inMargin(page, /Plan/).click();

  await page.getByText("2 blades × 1 medium: 2 arms.").waitFor();
  const said = ["blade 1", "blade 2", "medium 1"].map((label) =>
    page.getByLabel(label, { exact: true }),
  );
  expect(await Promise.all(said.map((one) => one.inputValue()))).toEqual(["B", "A", "felt"]);
  await expect.poll(() => headline(page).textContent()).toMatch(/of \d+ such trials/i);
  expect(await page.getByText("It was changed since it was kept").count()).toBe(0);
  expect(await page.evaluate(() => Object.keys(sessionStorage).join())).not.toContain("asked.");
  expect(await faults(page)).toEqual([]);
  expect(person.complaints).toEqual([]);
});

test("what a plan lacks is said, in words, and nothing that was typed is lost", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await beginTrial(person, "Lacking");
  await page.getByLabel("blade 1", { exact: true }).fill("B");
  await page.getByLabel("blade 2", { exact: true }).fill("A");
  await page.getByLabel("medium 1", { exact: true }).fill("rope");
  await writeItDown(page);
  await button(page, "Seal question and plan").click();
  await page.locator(".problems", { hasText: "Nothing is claimed yet" }).first().waitFor();

  await field(page, /could turn out wrong/).fill("B outlasts A in rope");
  await field(page, /^Read after so many cuts/).fill("0, 5, 3");
  await page.getByText("Three numbers or more that rise from 0").waitFor();
  await field(page, /^Read after so many cuts/).fill("0, 5, 30");
  await page.reload();
  expect(await field(page, /could turn out wrong/).inputValue()).toBe("B outlasts A in rope");
  expect(await field(page, /^Read after so many cuts/).inputValue()).toBe("0, 5, 30");

  await inMargin(page, /Ask/).click();
  await page.locator("summary", { hasText: "Call the trial otherwise" }).click();
  await page.getByLabel("Its name").fill("Found");
  await button(page, "Rename it").click();
  await named(page, "Ask: Found");
  await button(page, "Undo this").click();
  await named(page, "Ask: Lacking");
  expect(await field(page, /could turn out wrong/).inputValue()).toBe("B outlasts A in rope");
});

test("a notebook that cannot be called so says why beside its name", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  const name = page.getByLabel("What the notebook is called");
  await name.fill("rope/card");
  await button(page, "Make a notebook").click();
  const form = page.locator("form");
  await form.getByText("there is no folder “rope” here").waitFor();
  expect(await name.getAttribute("aria-invalid")).toBe("true");
  expect(await faults(page)).toEqual([]);
  await name.fill("n".repeat(300));
  await form.getByText("there is no folder").waitFor({ state: "detached" });
  await button(page, "Make a notebook").click();
  await form.getByText("The name is longer than a file's may be.").waitFor();
});

test("what was wrong with a question is not said of what mends it", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await beginTrial(person, "Doubled");
  await page.getByLabel("blade 1", { exact: true }).fill("A");
  await page.getByLabel("blade 2", { exact: true }).fill("A");
  await page.getByLabel("medium 1", { exact: true }).fill("rope");
  await button(page, "Write it down and plan").click();
  const said = page.locator(".problems", { hasText: "chosen twice" });
  await said.waitFor();
  await page.getByLabel("blade 2", { exact: true }).fill("B");
  await said.waitFor({ state: "detached" });
  await page.getByLabel("blade 2", { exact: true }).fill("");
  await page.getByLabel("blade 1", { exact: true }).fill("");
  await button(page, "Write it down and plan").click();
  const lacking = page.locator(".problems", { hasText: "Which blades cut it?" });
  await lacking.waitFor();
  await page.getByLabel("blade 1", { exact: true }).fill("B");
  await lacking.waitFor({ state: "detached" });
});

test("a medium that the kit has twice, dry and by its bare name, is asked and planned in", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await beginTrial(person, "Twice");
  for (const medium of [{ name: "rope", condition: "dry" }, { name: "rope" }]) {
    await askApi(app, "POST", "/kit/media", medium);
  }
  await page.reload();
  await page.getByLabel("blade 1", { exact: true }).fill("B");
  await page.getByLabel("blade 2", { exact: true }).fill("A");
  await page.getByLabel("medium 1", { exact: true }).fill("rope");
  await writeItDown(page);

  await expect.poll(() => page.getByLabel("Kind of reading").locator("option").count()).not.toBe(1);
  expect(await page.locator("datalist option[value=rope]").count()).toBe(1);
  expect(person.complaints).toEqual([]);
});

test("a question or plan with a field that is marked wrong is not written down or sealed", async () => {
  const person = await sitDown(browser, app.address);
  const { page } = person;
  await beginTrial(person, "Marked");
  await button(page, "Write it down and plan").click();
  await page.locator(".problems", { hasText: "Nothing is asked yet" }).waitFor();
  await askOfTwoBlades(person);
  const margin = page.getByLabel("Worth-it margin");
  await margin.fill("0,9");
  await button(page, "Write it down and plan").click();
  await page.locator(".problems", { hasText: "cannot be “0,9”. A number above 1." }).waitFor();
  await margin.fill("2");
  await writeItDown(page);

  await field(page, /^Bevel angles/).fill("200");
  await button(page, "Seal question and plan").click();
  await page.locator(".problems", { hasText: "cannot be “200”" }).waitFor();
  const here = await page.evaluate(() => (document.activeElement as HTMLInputElement).value);
  expect(here).toBe("200");
  await named(page, /^Plan: /);
});
