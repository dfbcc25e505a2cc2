import { beforeEach, expect, test, vi } from "vitest";
import { keepWorkedOut, workedOut } from "../src/app/planning/worked_out";
import type { Chances, PlanAsked } from "../src/wire/api";

const kept = new Map<string, string>();
beforeEach(() => {
  kept.clear();
  vi.stubGlobal("localStorage", {
    getItem: (place: string) => kept.get(place) ?? null,
    setItem: (place: string, text: string) => kept.set(place, text),
  });
});

const plan: PlanAsked["plan"] = {
  cuttings: [{ medium: "rope", checkpoint_cuts: [0, 1, 3] }],
  arms: [{ blade: "A", edge: { words: "15° per side" }, cutting: 0, words: "A" }],
  reading: { kind: "thread_push", repeats: 7 },
  stop: { level: 4 },
  runs_each: 6,
  order_seed: 1,
  runs: [],
};
const asked = (changes: Partial<PlanAsked> = {}): PlanAsked => ({
  plan,
  claims: [{ words: "B outlasts A", worth_it_margin: 1.5 }],
  assumptions: { true_ratio: 2 },
  ...changes,
});
const chances = { trials: 400 } as Chances;

test("what was worked out is there for the same plan, however it is told", () => {
  keepWorkedOut("t", asked(), chances);
  const { runs_each, ...rest } = plan;
  const told = { runs_each, ...rest, arms: [{ blade: "A", edge: {}, cutting: 0 }] };

  expect(workedOut("t", asked({ plan: told }), false)).toEqual(chances);
  expect(workedOut("other", asked(), false)).toBeUndefined();
});

test("what was worked out is not said of another plan, margin or assumption", () => {
  keepWorkedOut("t", asked(), chances);

  expect(workedOut("t", asked({ plan: { ...plan, runs_each: 5 } }), true)).toBeUndefined();
  const wider = [{ words: "", worth_it_margin: 2 }];
  expect(workedOut("t", asked({ claims: wider }), false)).toBeUndefined();
  expect(workedOut("t", asked({ assumptions: {} }), false)).toBeUndefined();
});

test("of a sealed plan it is there whatever stands in the fields of its draft", () => {
  keepWorkedOut("t", asked(), chances);

  expect(workedOut("t", asked({ assumptions: undefined }), true)).toEqual(chances);
});
