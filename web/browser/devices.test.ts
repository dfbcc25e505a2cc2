// A phone at the bench: let in by the code that the desk shows, it counts a run, and once it is put
// out it asks in vain. The phone reaches the program at an address of this machine's network.

import { networkInterfaces } from "node:os";
import { expect, test } from "vitest";
import type { BenchRun, Devices } from "../src/wire/api";
import { askApi, button, faults, phone, serveApp, sitDown } from "./app_opened";
import { browser, serveForEach } from "./each_served";
import { sealedTrial, twoBlades } from "./sealed";

serveForEach();

const isOnANetwork = Object.values(networkInterfaces())
  .flat()
  .some((one) => one && one.family === "IPv4" && !one.internal);

test.runIf(isOnANetwork)("a phone is let in once, cuts, and is put out", async () => {
  const app = await serveApp("--bench");
  try {
    await sealedTrial(
      app,
      twoBlades(["A", "C"], { medium: "sisal", checkpoint_cuts: [0, 20, 40] }),
    );
    const desk = await sitDown(browser, app.address);
    await desk.page.goto(new URL("/devices", app.address).href);
    await button(desk.page, "Let a device in")
      .or(button(desk.page, "Another code instead"))
      .click();
    const told = await askApi<Devices>(app, "GET", "/devices");
    const { address, code } = told.letting_in ?? { address: "", code: "" };
    await desk.page.getByText(code).waitFor();
    expect(await faults(desk.page)).toEqual([]);

    const { page } = await sitDown(browser, address, phone);
    await page.getByLabel("What this device is called").fill("the phone in the shop");
    expect(page.url()).not.toContain(code);
    expect(await faults(page)).toEqual([]);
    await button(page, "Let it in").click();

    await page.getByRole("link", { name: /Sisal/ }).click();
    expect(await faults(page)).toEqual([]);
    expect(await page.getByRole("link", { name: "To the plan" }).count()).toBe(0);
    await button(page, "I have read this").click();
    await button(page, "Begin it").click();
    await page.getByText("Before the first cut").waitFor();
    for (const digit of "104") await button(page, digit).click();
    await button(page, "Enter").click();
    await button(page, "Matched: begin to cut").click();
    await button(page, /^\+1 cut$/).click({ delay: 90 });
    const run = new URL(page.url()).searchParams.get("run");
    const cuts = async () => (await askApi<BenchRun>(app, "GET", `/bench/${run}`)).standing.cuts;
    await expect.poll(cuts).toBe(1);

    await button(desk.page, "Put out the phone in the shop").click();
    await desk.page.getByText("No device is let in yet").waitFor();
    await button(page, /^\+1 cut$/).click({ delay: 90 });
    await page.getByText("This device is not let in").waitFor();
    expect(await cuts()).toBe(1);
    await page.reload();
    await page.getByRole("heading", { name: "Let this device in" }).waitFor();

    await button(desk.page, "Let a device in").click();
    await desk.page.getByText("type the code").waitFor();
    const again = await askApi<Devices>(app, "GET", "/devices");
    await page.getByLabel("The code").fill("AAAA-AAAA");
    await button(page, "Let it in").click();
    await page.getByText("This code lets nobody in").waitFor();
    await page.getByLabel("The code").fill(again.letting_in?.code ?? "");
    await button(page, "Let it in").click();
    await expect.poll(cuts).toBe(2);
  } finally {
    await app.stop();
  }
});
