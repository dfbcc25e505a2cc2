// The program is killed again and again while a run is tapped: what it acknowledged is there, what it
// did not is sent again, and each tap counts once. KEENFALL_KILLS says how often (20).

import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import type { App, Bench, BenchEntry, BenchRun, Trial } from "../src/wire/api";
import { program } from "./opened";
import { twoBlades } from "./sealed";

const kills = Number(process.env.KEENFALL_KILLS ?? 20);
const folder = mkdtempSync(join(tmpdir(), "keenfall-killed-"));
let child: ChildProcess | undefined;
let address = "";
let notebook: string | undefined;

afterEach(() => {
  child?.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
});

async function started(...words: string[]): Promise<void> {
  const begun = spawn(program, ["open", "--no-open", ...words], { cwd: folder });
  child = begun;
  let said = "";
  address = await new Promise<string>((found, failed) => {
    begun.stdout?.on("data", (text) => {
      said += String(text);
      const named = /http:\S+#key=\S+/.exec(said);
      if (named) found(named[0]);
    });
    begun.on("exit", () => failed(new Error(`keenfall open ended: ${said}`)));
  });
  notebook = (await ask<App>("GET", "/app")).notebook?.id;
}

async function killed(): Promise<void> {
  const dying = child;
  const gone = new Promise((done) => dying?.on("exit", done));
  dying?.kill("SIGKILL");
  await gone;
}

async function ask<T>(method: string, path: string, body?: unknown): Promise<T> {
  const { origin, hash } = new URL(address);
  const answer = await fetch(`${origin}/api/v1${path}`, {
    method,
    headers: {
      "content-type": "application/json",
      "x-keenfall-key": hash.replace("#key=", ""),
      ...(notebook && { "x-keenfall-notebook": notebook }),
    },
    body: body === undefined ? undefined : JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(`${method} ${path}: ${await answer.text()}`);
  return answer.json() as Promise<T>;
}

const asked = twoBlades(["A", "B"], {
  medium: "sisal",
  checkpoint_cuts: [0, 100_000, 200_000],
});

test("nothing that was tapped is lost or counted twice, however often the program is killed", async () => {
  await started();
  await ask("POST", "/notebooks", { how: "make", path: "bench" });
  notebook = (await ask<App>("GET", "/app")).notebook?.id;
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
      setTimeout(() => void killed().then(done), end - Date.now());
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
    await started("bench.keen");
    const found = (await ask<BenchRun>("GET", `/bench/${uid}`)).standing.cuts;
    expect(found).toBeGreaterThanOrEqual(acknowledged);
    expect(found).toBeLessThanOrEqual(made);
    const again = await ask<BenchRun>("POST", `/bench/${uid}`, { entries: waiting });
    expect(again.standing.cuts).toBe(made);
    acknowledged = made;
  }
  expect(made).toBeGreaterThan(kills);
});
