// The page of a phone is killed again and again while a run is counted and read, the program too, and
// the network goes and comes back: each tap the page counted is there, once, and so is each reading.
// KEENFALL_PAGE_KILLS says how often (6).

import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import type { App, Bench, BenchRun, Trial } from "../src/wire/api";
import { button } from "./app_opened";
import { chromiumPath } from "./opened";
import { ProgramToKill } from "./program_to_kill";
import { twoBlades } from "./sealed";

const kills = Number(process.env.KEENFALL_PAGE_KILLS ?? 6);
const everyCuts = 7;
const run = "0123456789abcdef0123456789abcdef";
const killed = new ProgramToKill();
const ask = killed.ask.bind(killed);
const someMs = (most: number) => Math.floor(Math.random() * most);
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Chromium with a profile that outlives it. */
class Phone {
  #child: ChildProcess | undefined;
  #browser: Browser | undefined;

  async open(): Promise<Page> {
    const profile = join(killed.folder, "profile");
    const told = join(profile, "DevToolsActivePort");
    rmSync(told, { force: true });
    this.#child = spawn(
      chromiumPath(),
      ["--headless=new", "--no-sandbox", "--no-first-run", "--remote-debugging-port=0"].concat(
        `--user-data-dir=${profile}`,
        "about:blank",
      ),
      { stdio: "ignore", detached: true },
    );
    while (!existsSync(told) || !readFileSync(told, "utf8").includes("\n")) await pause(20);
    const [port] = readFileSync(told, "utf8").split("\n");
    this.#browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    const [context] = this.#browser.contexts();
    const page = await context?.newPage();
    if (!page) throw new Error("Chromium has no page");
    await page.setViewportSize({ width: 360, height: 740 });
    return page;
  }

  async kill(): Promise<void> {
    const dying = this.#child;
    if (!dying?.pid || dying.exitCode !== null || dying.signalCode !== null) return;
    const gone = new Promise((done) => dying.on("exit", done));
    process.kill(-dying.pid, "SIGKILL");
    await gone;
    await this.#browser?.close().catch(() => undefined);
  }
}
const phone = new Phone();

afterEach(async () => {
  await phone.kill();
  killed.leave();
});

/** What the script has seen the page count, and the one thing that was under way when it died. */
const record = { cuts: 0, readings: [104], underWay: undefined as "cut" | number | undefined };

const isDue = () => record.readings.length <= Math.floor(record.cuts / everyCuts);

/** One cut, or the reading that is due: done once the page shows so. */
async function step(page: Page): Promise<void> {
  if (isDue()) {
    const reading = 104 + record.readings.length;
    record.underWay = reading;
    for (const digit of String(reading))
      await page.getByRole("button", { name: digit, exact: true }).click();
    await button(page, "Enter").click();
    await page.getByText("to go").waitFor();
    record.readings.push(reading);
  } else {
    record.underWay = "cut";
    await page.keyboard.press("Space");
    const [shown] = isDueAfter() ? ["Read now"] : [String(record.cuts + 1)];
    await page
      .getByText(shown ?? "", { exact: shown !== "Read now" })
      .first()
      .waitFor();
    record.cuts += 1;
  }
  record.underWay = undefined;
}
const isDueAfter = () => (record.cuts + 1) % everyCuts === 0;

/** What was under way is there or is not: the page that came back says which. */
async function settle(page: Page): Promise<void> {
  const { underWay } = record;
  record.underWay = undefined;
  await page
    .getByText(/to go|Read now/)
    .first()
    .waitFor();
  const reads = (await page.getByText("Read now").count()) > 0;
  if (typeof underWay === "number") {
    if (!reads) record.readings.push(underWay);
  } else if (underWay === "cut") {
    const shown = reads ? undefined : Number(await page.locator(".count").textContent());
    if (reads || shown === record.cuts + 1) record.cuts += 1;
  }
  if (reads) expect(isDue()).toBe(true);
  else {
    const shown = await page.locator(".count").textContent();
    const said = await page.locator("main").textContent();
    expect(Number(shown), `${underWay} was under way; the page says: ${said}`).toBe(record.cuts);
  }
}

async function come(page: Page, address: string): Promise<void> {
  for (;;) {
    try {
      await page.goto(address);
      await page
        .getByText(/to go|Read now/)
        .first()
        .waitFor({ timeout: 5_000 });
      return;
    } catch {
      await pause(100);
    }
  }
}

test("nothing the page counted is lost or counted twice, however often it is killed", {
  timeout: 60_000 + kills * 20_000,
}, async () => {
  await killed.start(["--bench"], /is back\./);
  await ask("POST", "/notebooks", { how: "make", path: "bench" });
  killed.notebook = (await ask<App>("GET", "/app")).notebook?.id;
  const checkpoints = Array.from({ length: 60 + kills }, (_, place) => place * everyCuts);
  const cutting = { medium: "sisal", checkpoint_cuts: checkpoints };
  const trial = await ask<Trial>("POST", "/trials", {
    name: "T",
    asked: twoBlades(["A", "B"], cutting),
  });
  await ask("POST", `/trials/${trial.uid}/seal`, {});
  const { lines } = await ask<Bench>("GET", `/trials/${trial.uid}/bench`);
  await ask("POST", `/trials/${trial.uid}/bench`, { uid: run, line: 0, order: lines[0]?.order });
  await ask("POST", `/bench/${run}`, {
    entries: [
      { id: "r", at_ms: 1, what: "reading", cuts: 0, reading: 104 },
      { id: "s", at_ms: 2, what: "start", subject: "matched" },
    ],
  });
  const [, port] = /http:\S+:(\d+)\/bench/.exec(killed.said) ?? [];
  const [, code] = /with the code (\S+),/.exec(killed.said) ?? [];
  const bench = `http://127.0.0.1:${port}/bench`;
  const again = ["--bench", `--bench-port=${port}`, "bench.keen"];

  let page = await phone.open();
  await page.goto(`${bench}#code=${code}`);
  await button(page, "Let it in").click();
  await page.getByRole("link", { name: /T/ }).waitFor();

  for (let times = 0; times < kills; times++) {
    await come(page, `${bench}?run=${run}`);
    await settle(page);
    const dies = pause(300 + someMs(1_500)).then(() => phone.kill());
    const harm = times % 3;
    if (harm === 1)
      void pause(someMs(600))
        .then(() => page.context().setOffline(true))
        .catch(() => undefined);
    const back =
      harm === 2
        ? pause(someMs(600))
            .then(() => killed.kill())
            .then(() => pause(someMs(800)))
            .then(() => killed.start(again, /is back\./))
        : Promise.resolve();
    try {
      for (;;) await step(page);
    } catch (failure) {
      const isKilled = failure instanceof Error && failure.message.includes("has been closed");
      if (!isKilled) throw failure;
    }
    await dies;
    await back;
    page = await phone.open();
  }

  await come(page, `${bench}?run=${run}`);
  await settle(page);
  await page.getByText("All is kept").waitFor();
  const { standing } = await ask<BenchRun>("GET", `/bench/${run}`);
  expect(standing.cuts).toBe(record.cuts);
  await ask("POST", `/bench/${run}`, { entries: [{ id: "e", at_ms: 3, what: "closed" }] });
  const over = await ask<BenchRun>("GET", `/bench/${run}`);
  expect(over.standing.readings?.map(({ reading }) => reading)).toEqual(record.readings);
  expect(record.cuts).toBeGreaterThan(kills);
});
