// A table that takes a while: how far it is, that it can be stopped, and that it comes in.

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Home } from "../src/wire/api";
import { askApi, button, faults, headline, type ServedApp, serveApp, sitDown } from "./app_opened";
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

/** Some ten megabytes. */
const manyRuns = 8_000;

/** `runs` of twenty readings each. */
function table(runs: number): Buffer {
  const rows = ["blade,medium,run,cuts,reading"];
  for (let run = 1; run <= runs; run++) {
    for (let cuts = 0; cuts < 20; cuts++) {
      rows.push(`A,sisal from the roll that hangs beside the bench,${run},${cuts},${100 + cuts}`);
    }
  }
  return Buffer.from(`${rows.join("\n")}\n`);
}

const file = (name: string, runs: number) => ({ name, mimeType: "text/csv", buffer: table(runs) });

test("tells how far it is, can be stopped, and comes in", async () => {
  const { page, complaints } = await sitDown(browser, app.address);
  await page.getByLabel("What the notebook is called").fill("rope");
  await button(page, "Make a notebook").click();
  await page.getByRole("link", { name: "Type in a tally sheet" }).click();
  const give = (name: string, runs: number) =>
    page.locator("input[type=file]").first().setInputFiles(file(name, runs));
  const under = (words: string) => page.getByRole("progressbar", { name: words });
  const stopped = page.getByText("It was stopped before it was done, and nothing was changed.");
  const comesIn = page.getByText(/would come in/);
  await give("small.csv", 3);
  await page.getByText(/3 runs\s+with 60 readings would come in/).waitFor();

  await give("large.csv", manyRuns);
  await under("The table is being read.").waitFor();
  // Nothing is shown of the table before it.
  expect(await page.getByText("small.csv").count()).toBe(0);
  expect(await comesIn.count()).toBe(0);
  await button(page, "Stop this").click();
  await stopped.waitFor();

  await give("large.csv", manyRuns);
  await comesIn.waitFor({ timeout: 60_000 });
  await button(page, "Take it in").click();
  await under("The table is being taken in.").waitFor();
  await button(page, "Stop this").click();
  await stopped.waitFor();
  expect(await faults(page)).toEqual([]);

  await button(page, "Take it in").click();
  await headline(page).waitFor({ timeout: 60_000 });
  const home = await askApi<Home>(app, "GET", "/home");
  expect(home.trials.map(({ runs }) => runs)).toEqual([manyRuns]);
  expect(complaints).toEqual([]);
}, 180_000);
