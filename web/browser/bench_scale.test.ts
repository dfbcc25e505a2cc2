// Reading by a scale at the bench: a pseudo-terminal stands for its line.

import { type ChildProcess, spawn } from "node:child_process";
import { afterEach, expect, test } from "vitest";
import type { BenchRun, Scale } from "../src/wire/api";
import { askApi, button, faults, phone, sitDown } from "./app_opened";
import { app, browser, serveForEach } from "./each_served";
import { sealedTrial, twoBlades } from "./sealed";

serveForEach();

const terminal = `
import os, pty, sys, tty
master, slave = pty.openpty()
tty.setraw(slave)
print(os.ttyname(slave), flush=True)
for line in sys.stdin: os.write(master, line.strip().encode() + b"\\r\\n")
`;

/** A scale that sends what it is told to, until it is unplugged. */
class MadeScale {
  readonly #child: ChildProcess = spawn("python3", ["-c", terminal]);

  device(): Promise<string> {
    return new Promise((found) => {
      this.#child.stdout?.once("data", (said) => found(String(said).trim()));
    });
  }
  async press(most: number): Promise<void> {
    for (const share of [0, 0, 0.3, 0.7, 0.9, 1, 0.4, 0.05, 0, 0, 0]) {
      this.#child.stdin?.write(`${(most * share).toFixed(1)} g\n`);
      await new Promise((done) => setTimeout(done, 60));
    }
  }
  unplug(): void {
    this.#child.kill("SIGKILL");
  }
}
let scale: MadeScale | undefined;
afterEach(() => scale?.unplug());

test("a press is held, taken with its raw line, and typing goes on without the scale", async () => {
  scale = new MadeScale();
  const device = await scale.device();
  const cutting = { medium: "sisal", checkpoint_cuts: [0, 20, 40] };
  const trial = await sealedTrial(
    app,
    twoBlades(["A", "C"], cutting, { reading: { kind: "thread_push", repeats: 3 } }),
  );
  await askApi<Scale>(app, "PUT", "/scale", { device });
  const { page } = await sitDown(browser, app.address, phone);
  await page.goto(new URL(`/bench?trial=${trial}`, app.address).href);
  await button(page, "I have read this").click();
  await button(page, "Begin it").click();
  await page.getByText("Listening to the scale").waitFor();
  expect(await faults(page)).toEqual([]);

  // What was pressed while another reading was typed is not of the next one.
  await scale.press(300);
  await page.getByText("The scale holds this").waitFor();
  await page.reload();
  await page.getByText("1 of 3").waitFor();
  await page.getByText("The scale holds this").waitFor({ state: "detached" });
  await scale.press(104.2);
  await page.getByText("The scale holds this").waitFor();
  expect(await faults(page)).toEqual([]);
  await button(page, "Enter").click();
  await page.getByText("2 of 3").waitFor();
  await scale.press(108);
  await page.getByText("The scale holds this").waitFor();
  await page.keyboard.press("9");
  await page.keyboard.press("9");
  await page.keyboard.press("Enter");
  await page.getByText("3 of 3").waitFor();
  scale.unplug();
  await page.getByText("The scale is unplugged").waitFor();
  expect(await faults(page)).toEqual([]);
  await page.keyboard.press("7");
  await page.keyboard.press("7");
  await page.keyboard.press("Enter");
  await button(page, "Matched: begin to cut").waitFor();

  const run = new URL(page.url()).searchParams.get("run");
  const { standing } = await askApi<BenchRun>(app, "GET", `/bench/${run}`);
  expect(standing.start.readings).toBe(3);
  expect(standing.start.stations[0]?.median).toBe(99);

  await button(page, "Matched: begin to cut").click();
  await button(page, "More …").click();
  await page.getByText("A scale on a serial or USB line").waitFor();
  expect(await faults(page)).toEqual([]);
  await button(page, "Read without it").click();
  await page.getByText("No USB line is plugged in").waitFor();
  expect((await askApi<Scale>(app, "GET", "/scale")).used).toBeUndefined();
});
