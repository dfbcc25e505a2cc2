// One browser for a file of tests, and for each of them an app that was just started.

import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach } from "vitest";

import { type ServedApp, serveApp } from "./app_opened";
import { startBrowser } from "./opened";

export let browser: Browser;
export let app: ServedApp;

/** At the head of a file: whatever a test left open is closed after it. */
export function serveForEach(): void {
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
}
