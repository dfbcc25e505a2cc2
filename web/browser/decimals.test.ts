// Whoever writes decimals with a comma: the sheet of a plan is written so, too.

import { expect, test } from "vitest";
import { button, sitDown } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";
import { sealedTrial, twoBlades } from "./sealed";

serveForEach();

test("a sheet with planned decimals takes readings with a comma", async () => {
  const method = { motion: "slice" as const, cut_length_mm: 25, edge_used_mm: 40.5 };
  const cutting = { medium: "rope", method, checkpoint_cuts: [0, 1, 3] };
  const uid = await sealedTrial(app, twoBlades(["A", "B"], cutting));
  const { page } = await sitDown(browser, app.address);
  await page.goto(new URL(`/trials/${uid}/enter`, app.address).href);
  await page.getByRole("heading", { name: "Enter: Sisal" }).waitFor();
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
