// Whoever writes decimals with a comma: the sheet of a plan is written so, too.

import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import type { Trial } from "../src/wire/api";
import { askApi, button, type ServedApp, serveApp, sitDown } from "./app_opened";
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

const edge = { bevel_angle_per_side_deg: 17.5 };
const asked = {
  claims: [{ words: "B lasts longer", worth_it_margin: 1.5 }],
  plan: {
    cuttings: [
      {
        medium: "rope",
        method: { motion: "slice", cut_length_mm: 25, edge_used_mm: 40.5 },
        checkpoint_cuts: [0, 1, 3],
      },
    ],
    arms: [
      { blade: "A", edge, cutting: 0 },
      { blade: "B", edge, cutting: 0 },
    ],
    reading: { kind: "thread_push", repeats: 1 },
    stop: { level: 4 },
    runs_each: 2,
    order_seed: 7,
    runs: [
      { arm: 0, block: 1, order: 1 },
      { arm: 1, block: 1, order: 2 },
      { arm: 1, block: 2, order: 3 },
      { arm: 0, block: 2, order: 4 },
    ],
  },
};

test("a sheet with planned decimals takes readings with a comma", async () => {
  await askApi(app, "POST", "/notebooks", { how: "make", path: "bench" });
  const { uid } = await askApi<Trial>(app, "POST", "/trials", { name: "Rope", asked });
  await askApi(app, "POST", `/trials/${uid}/seal`);
  const { page } = await sitDown(browser, app.address);
  await page.goto(new URL(`/trials/${uid}/enter`, app.address).href);
  await page.getByRole("heading", { name: "Enter: Rope" }).waitFor();
  const names = page.locator('[data-cell$=":0"]');
  const labels = await names.evaluateAll((cells) =>
    cells.map((cell) => (cell as HTMLInputElement).value),
  );
  const at = (label: string) => page.locator(`[data-cell="${labels.indexOf(label)}:1"]`);
  await at("0").fill("104,5");
  await at("1").fill("131");
  await at("3").fill("160,5");

  await page.getByText("Read it otherwise").click();
  await page.getByLabel("Decimals are written").selectOption("comma");

  await expect.poll(() => at("edge used (mm)").inputValue()).toBe("40,5");
  await expect.poll(() => button(page, "Take it in").isEnabled()).toBe(true);
});
