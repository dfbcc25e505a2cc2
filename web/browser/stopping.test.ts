// Keenfall is stopped from its own pages, by whoever means it.

import type {} from "playwright-core";
import { describe, expect, test } from "vitest";
import { button, desktop, faults, phone, sitDown, tabTo } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";

serveForEach();

const answers = () =>
  fetch(new URL(app.address).origin).then(
    () => true,
    () => false,
  );

describe.each([
  ["on a desktop", desktop],
  ["on a phone", phone],
])("Keenfall %s", (_where, size) => {
  test("is stopped at the foot of its pages, and says where all of it is", async () => {
    const { page, complaints } = await sitDown(browser, app.address, size);
    await page.getByLabel(/notebook is called/).fill("bench");
    await button(page, "Make a notebook").click();
    await page.getByRole("heading", { name: "No trials yet" }).waitFor();

    await button(page, "Stop Keenfall").click();
    expect(await faults(page)).toEqual([]);
    await button(page, "Stop it").click();

    await page.getByRole("heading", { name: "Keenfall is stopped" }).waitFor();
    await page.getByText(`${app.folder}/bench.keen`).waitFor();
    await expect.poll(answers).toBe(false);
    expect(await faults(page)).toEqual([]);
    expect(await page.getByText("Keenfall does not answer").count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});

test("by the keyboard alone: asked to stop, left open, and where one was", async () => {
  const { page } = await sitDown(browser, app.address);
  await page.getByRole("heading", { level: 1 }).waitFor();

  await tabTo(page, "button", /^Stop Keenfall/);
  await page.keyboard.press("Enter");
  await tabTo(page, "button", /^Leave it open/);
  await page.keyboard.press("Enter");

  const focused = () => page.evaluate(() => document.activeElement?.textContent?.trim());
  await expect.poll(focused).toBe("Stop Keenfall");
  expect(await answers()).toBe(true);
});
