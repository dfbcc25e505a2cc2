// How a run at the bench is foreseen while its entries wait: as the program says it once they arrived.

import { describe, expect, test } from "vitest";
import { foreseen, type Standing } from "../src/bench/foreseen";
import type { BenchEntry, BenchRun } from "../src/wire/api";

const sheet = {
  checkpoints: [0, 1, 3],
  repeats: 2,
  stations: ["heel", "tip"],
} as unknown as BenchRun["sheet"];
const kept = (changes: Partial<Standing> = {}): Standing => ({
  phase: "cutting",
  cuts: 0,
  readings_here: 2,
  readings_taken: 2,
  next_checkpoint_cuts: 1,
  sharpenings: 1,
  decided: "matched",
  start: { readings: 2, within_gate: true, burr_suspected: false, stations: [] },
  is_paused: false,
  pieces: 1,
  minutes_at_work: 0,
  set_aside: [],
  ...changes,
});
let made = 0;
const entry = (what: BenchEntry["what"], more: Partial<BenchEntry> = {}): BenchEntry => ({
  id: `e${++made}`,
  at_ms: made,
  what,
  ...more,
});
const standsAfter = (entries: BenchEntry[], standing = kept()) =>
  foreseen({ sheet, standing }, entries);

describe("A run is foreseen", () => {
  test("as it was kept where nothing waits", () => {
    const standing = kept();
    expect(standsAfter([], standing)).toBe(standing);
  });

  test("to be read at a checkpoint, from its first station on", () => {
    const standing = standsAfter([entry("cuts", { cuts: 1 })]);
    expect(standing).toMatchObject({
      phase: "reading",
      cuts: 1,
      readings_here: 0,
      next_station: "heel",
      next_checkpoint_cuts: 3,
    });
  });

  test("not to be read again where the cut that reached a checkpoint is taken back", () => {
    const last = { id: "k", words: "1 cut", what: "cuts", cuts: 1 } as const;
    const standing = kept({ cuts: 1, readings_here: 0, phase: "reading", to_take_back: last });
    const back = entry("taken back", { subject: "k" });

    expect(standsAfter([back], standing)).toMatchObject({ phase: "cutting", cuts: 0 });
    expect(standsAfter([back, entry("cuts", { cuts: 1 })], standing)).toMatchObject({
      phase: "reading",
      cuts: 1,
      readings_here: 0,
    });
  });

  test("to go on once it is read as often as planned", () => {
    const readings = [1, 2].map((reading) => entry("reading", { cuts: 1, reading }));
    const standing = standsAfter([entry("cuts", { cuts: 1 }), ...readings]);
    expect(standing).toMatchObject({ phase: "cutting", readings_here: 2 });
  });

  test("at the stop where the last checkpoint is read", () => {
    const readings = [1, 2].map((reading) => entry("reading", { cuts: 3, reading }));
    const standing = standsAfter([entry("cuts", { cuts: 3 }), ...readings]);
    expect(standing).toMatchObject({ phase: "at_the_stop" });
    expect(standing.next_checkpoint_cuts).toBeUndefined();
  });

  test("without what was taken back, waiting or kept", () => {
    const first = entry("cuts", { cuts: 1 });
    expect(standsAfter([first, entry("taken back", { subject: first.id })]).cuts).toBe(0);

    const last = { id: "k", words: "1 cut", what: "cuts", cuts: 1 };
    const standing = standsAfter(
      [entry("taken back", { subject: "k" })],
      kept({ cuts: 2, to_take_back: last }),
    );
    expect(standing.cuts).toBe(1);
    expect(standing.to_take_back).toBeUndefined();
  });

  test("to begin with the start until that is decided, and anew when it is sharpened again", () => {
    const unread = kept({ phase: "preparing", decided: undefined, readings_here: 2 });
    expect(standsAfter([entry("noted")], unread).phase).toBe("preparing");
    expect(standsAfter([entry("start", { subject: "matched" })], unread).phase).toBe("cutting");
    expect(standsAfter([entry("start", { subject: "sharpen again" })], unread)).toMatchObject({
      phase: "preparing",
      readings_here: 0,
      sharpenings: 2,
    });
  });

  test("paused, gone on with, and over, after which nothing counts", () => {
    expect(standsAfter([entry("paused")]).is_paused).toBe(true);
    expect(standsAfter([entry("paused"), entry("resumed")]).is_paused).toBe(false);
    const over = standsAfter([entry("closed"), entry("cuts", { cuts: 1 })]);
    expect(over).toMatchObject({ phase: "closed", cuts: 0 });
  });
});
