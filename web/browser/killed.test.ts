// The program is killed again and again while a run is tapped: what it acknowledged is there, what it
// did not is sent again, and each tap counts once. KEENFALL_KILLS says how often (20).

import { afterEach, expect, test } from "vitest";
import type { App, Bench, BenchEntry, BenchRun, Trial } from "../src/wire/api";
import { ProgramToKill } from "./program_to_kill";
import { twoBlades } from "./sealed";

const kills = Number(process.env.KEENFALL_KILLS ?? 20);
const killed = new ProgramToKill();
const ask = killed.ask.bind(killed);

afterEach(() => killed.leave());

const asked = twoBlades(["A", "B"], {
  medium: "sisal",
  checkpoint_cuts: [0, 100_000, 200_000],
});

test("nothing that was tapped is lost or counted twice, however often the program is killed", async () => {
  await killed.start();
  await ask("POST", "/notebooks", { how: "make", path: "bench" });
  killed.notebook = (await ask<App>("GET", "/app")).notebook?.id;
  const trial = await ask<Trial>("POST", "/trials", { name: "T", asked });
  await ask("POST", `/trials/${trial.uid}/seal`, {});
  const uid = "0123456789abcdef0123456789abcdef";
  const bench = await ask<Bench>("GET", `/trials/${trial.uid}/bench`);
  await ask("POST", `/trials/${trial.uid}/bench`, { uid, line: 0, order: bench.lines[0]?.order });
  await ask("POST", `/bench/${uid}`, {
    entries: [
      { id: "r", at_ms: 1, what: "reading", cuts: 0, reading: 104 },
      { id: "s", at_ms: 2, what: "start", subject: "matched" },
    ],
  });

  let made = 0;
  let acknowledged = 0;
  for (let times = 0; times < kills; times++) {
    const end = Date.now() + 5 + Math.floor(Math.random() * 120);
    const killing = new Promise<void>((done) => {
      setTimeout(() => void killed.kill().then(done), end - Date.now());
    });
    const waiting: BenchEntry[] = [];
    for (;;) {
      made += 1;
      waiting.push({ id: `t${made}`, at_ms: made, what: "cuts", cuts: 1 });
      try {
        const run = await ask<BenchRun>("POST", `/bench/${uid}`, { entries: waiting });
        acknowledged = made;
        expect(run.standing.cuts).toBe(made);
        waiting.length = 0;
      } catch (failure) {
        if (failure instanceof Error && failure.name === "AssertionError") throw failure;
        break;
      }
    }
    await killing;
    await killed.start(["bench.keen"]);
    const found = (await ask<BenchRun>("GET", `/bench/${uid}`)).standing.cuts;
    expect(found).toBeGreaterThanOrEqual(acknowledged);
    expect(found).toBeLessThanOrEqual(made);
    const again = await ask<BenchRun>("POST", `/bench/${uid}`, { entries: waiting });
    expect(again.standing.cuts).toBe(made);
    acknowledged = made;
  }
  expect(made).toBeGreaterThan(kills);
});
