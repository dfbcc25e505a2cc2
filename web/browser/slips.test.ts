// A sheet with slips in it: each is said beside its cell, with what to do, and nothing beside it is blamed.

import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { askApi, button, faults, phone, sitDown } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";

serveForEach();

const cell = (page: Page, row: number, column: number) =>
  page.locator(`[data-cell="${row}:${column}"]`);
const cannotBeRead = (page: Page) => page.getByRole("region", { name: "What cannot be read" });
const lookAgain = (page: Page) => page.getByRole("region", { name: "What to look at again" });

/** From the second column on; `unit`: none, or that of the first run. */
const tally = [
  ["A", "", "B"],
  ["rope", "", ""],
  ["1", "2", "1"],
  ["", "", ""],
  [],
  ["104", "101", "99"],
  ["131", "128", "120"],
  ["150", "146", "138"],
];

async function type(page: Page, rows: readonly (readonly string[])[]): Promise<void> {
  for (const [row, cells] of rows.entries()) {
    for (const [column, text] of cells.entries()) {
      if (text) await cell(page, row, column + 1).fill(text);
    }
  }
}

async function atANewSheet(size?: { width: number; height: number }): Promise<Page> {
  const { page } = await sitDown(browser, app.address, size);
  await page.getByLabel("What the notebook is called").fill("rope");
  await button(page, "Make a notebook").click();
  await page.getByRole("heading", { name: "No trials yet" }).waitFor();
  await page.getByRole("link", { name: "Type in a tally sheet" }).click();
  return page;
}

test("examples say that they are none of the values", async () => {
  const page = await atANewSheet();

  expect(await cell(page, 0, 1).getAttribute("placeholder")).toBe("such as A");
  expect(await cell(page, 3, 1).getAttribute("placeholder")).toBe("such as gf");
});

test("one cell in another unit is blamed alone, and kinds of problem are folded", async () => {
  const page = await atANewSheet(phone);
  await type(page, tally);
  await cell(page, 7, 2).fill("150 N");

  await cannotBeRead(page).getByText("This reading says N, and the others of run 2").waitFor();
  expect(await page.locator('[aria-invalid="true"]').count()).toBe(1);
  expect(await cell(page, 7, 2).getAttribute("aria-invalid")).toBe("true");
  await page.getByText(/3 runs\s+with 8 readings would come in/).waitFor();
  await cell(page, 7, 2).fill("-4");
  await cell(page, 7, 1).fill("-15");
  await cannotBeRead(page).getByText("2 cells:").waitFor();
  expect(
    await cannotBeRead(page)
      .getByText(/Accepted:/)
      .count(),
  ).toBe(1);
  await cannotBeRead(page).getByRole("button", { name: /-15/ }).click();
  expect(await cell(page, 7, 1).evaluate((it) => it === document.activeElement)).toBe(true);
  expect(await faults(page)).toEqual([]);
});

test("a column without a run is asked for one, and the others come in", async () => {
  const page = await atANewSheet();
  await type(page, tally);
  await button(page, "One more run").click();
  await cell(page, 6, 4).fill("122");

  await cannotBeRead(page)
    .getByText(/Column E has no run name and no blade/)
    .waitFor();
  await page.getByText(/3 runs\s+with 9 readings would come in/).waitFor();
});

test("a likely slip is named beside its cell and comes in", async () => {
  const page = await atANewSheet();
  await type(page, tally);
  await cell(page, 6, 1).fill("1310");

  await lookAgain(page).getByText("1310 is about").waitFor();
  expect(await cannotBeRead(page).count()).toBe(0);
  await cell(page, 6, 1).focus();
  await page.locator(".at-cell").getByText("a slip of the decimal point?").waitFor();
  expect(await button(page, "Take it in").isEnabled()).toBe(true);
  expect(await faults(page)).toEqual([]);
});

test("a run that is there says with which reading it differs, or that it is there", async () => {
  const page = await atANewSheet();
  await type(page, tally);
  await page.getByLabel("What the trial is called").fill("odd");
  await button(page, "Take it in").click();
  await page.getByRole("heading", { name: "Judge: odd" }).waitFor();
  await page.goto(page.url().replace("/judge", "/enter"));
  await type(page, tally);
  await page.getByText("All of it is in odd already, as it stands here").waitFor();

  await cell(page, 6, 1).fill("137");
  await page
    .getByText(/is in the trial already, and there reads 131 at \d+, and here 137/)
    .waitFor();
  await page.getByText("Where the trial is wrong, press the reading under Judge").waitFor();
  expect(await faults(page)).toEqual([]);
});

test("a name that is taken leads to that trial, into it, or to another name", async () => {
  const page = await atANewSheet();
  await type(page, tally);
  await page.getByLabel("What the trial is called").fill("odd");
  await button(page, "Take it in").click();
  await page.getByRole("heading", { name: "Judge: odd" }).waitFor();
  await page.goto(new URL("/enter", app.address).href);
  await type(page, [...tally.slice(0, 2), ["3", "4", "3"], ...tally.slice(3)]);
  await page.getByLabel("What the trial is called").fill("odd");

  await page.getByText("There is a trial “odd” already.").waitFor();
  expect(await page.getByRole("link", { name: "Look at “odd”" }).count()).toBe(1);
  expect(await faults(page)).toEqual([]);
  await button(page, "Call it “odd 2”").click();
  expect(await page.getByLabel("What the trial is called").inputValue()).toBe("odd 2");
  await page.getByLabel("What the trial is called").fill("odd");
  await button(page, "Take it into “odd”").click();
  await page.getByRole("heading", { name: "Judge: odd" }).waitFor();
  const home = await askApi<{ trials: { name: string }[] }>(app, "GET", "/home");
  expect(home.trials.map(({ name }) => name)).toEqual(["odd"]);
});

test("of a dropped table it is said which rows stand twice, and a finish without its system", async () => {
  const page = await atANewSheet();
  const rows = [
    "blade,finish,medium,run,cuts,reading",
    "A,1000,rope,1,0,104",
    "A,1000,rope,1,1,131",
    "A,1000,rope,1,1,131",
    "A,1000,rope,1,3,146",
    "A,1000,rope,1,7,160",
  ];
  const buffer = Buffer.from(`${rows.join("\n")}\n`);
  await page
    .locator("input[type=file]")
    .first()
    .setInputFiles({ name: "bench.csv", mimeType: "text/csv", buffer });

  await lookAgain(page).getByText("stands in line 3 already. Both are taken").waitFor();
  await lookAgain(page).getByText("“1000” does not say of which grit system it is").waitFor();
  expect(await page.locator("td.odd").count()).toBe(2);
});

test("a sheet too large to be kept in the notebook says so", async () => {
  const page = await atANewSheet();
  const problem = { kind: "too_large", sentence: "What was sent is larger than 1 MiB." };
  await page.route("**/api/v1/sheets/**", (route) =>
    route.request().method() === "PUT"
      ? route.fulfill({ status: 413, json: { problems: [problem] } })
      : route.continue(),
  );
  await cell(page, 0, 1).fill("A");

  await page.getByText("This sheet is too large to be kept in the notebook").waitFor();
  expect(await faults(page)).toEqual([]);
});
