// Pictures as they are used: drawn anew in another width, read off by keyboard, and one that cannot
// be drawn.

import { readFileSync, writeFileSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { keenfall, open, scratch, shown, startBrowser } from "./opened";

const files = scratch();
let browser: Browser;

beforeAll(async () => {
  browser = await startBrowser();
  keenfall("demo", "--quiet", `--out=${files.file("demo.html")}`);
});

afterAll(async () => {
  await browser?.close();
  files.gone();
});

describe("the pictures of a report", () => {
  test("keeps a followed run marked when the pictures are drawn anew in another width", async () => {
    const { page } = await open(browser, files.file("demo.html"));
    await page.locator("tr[data-run] button").first().click();
    await page.mouse.move(0, 0);
    const key = await page.locator("tr[data-run]").first().getAttribute("data-run");
    const all = page.locator(`svg [data-run="${key}"]`);
    const marked = page.locator(`svg [data-run="${key}"].marked-run`);
    const wide = await page.locator("svg").first().getAttribute("width");

    await page.setViewportSize({ width: 600, height: 900 });
    await page.waitForFunction(
      (before) => document.querySelector("svg")?.getAttribute("width") !== before,
      wide,
    );

    expect(await marked.count()).toBeGreaterThanOrEqual(4);
    expect(await marked.count()).toBe(await all.count());
  });

  test("reads the curves off by keyboard, in words that a screen reader says", async () => {
    const { page } = await open(browser, files.file("demo.html"));
    const slider = page.locator("figure[data-figure=curves] input[type=range]").first();
    await slider.focus();
    await page.keyboard.press("Home");

    expect(await slider.getAttribute("aria-valuetext")).toMatch(
      /^At 0 cuts: A \d+ gf .*; C \d+ gf/,
    );
    await page.keyboard.press("End");
    expect(await slider.getAttribute("aria-valuetext")).toContain("beyond what was cut");
  });

  test("says so where a picture cannot be drawn, and draws all others", async () => {
    const broken = readFileSync(files.file("demo.html"), "utf8").replace(
      /(data-figure="ratios"[^>]*data-pairs=")[^"]*/,
      "$199",
    );
    writeFileSync(files.file("broken.html"), broken);
    const { page, complaints } = await open(browser, files.file("broken.html"));
    const { figures, pictures } = await shown(page);

    expect(pictures).toBe(figures - 1);
    expect(complaints.join()).toContain("no entry 99");
    const figure = page.locator("figure[data-figure=ratios]").first();
    expect(await figure.locator(".picture").textContent()).toContain("could not be drawn");
    expect(await page.locator("tr[data-run] button").count()).toBeGreaterThan(30);
  });
});
