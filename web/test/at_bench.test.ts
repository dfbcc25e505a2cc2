// What is tapped stays in this device's storage until the program says that it is kept.
import { beforeEach, expect, test, vi } from "vitest";
import * as api from "../src/api/endpoints";
import { Refused, Unanswered } from "../src/api/send";
import { AtBench } from "../src/bench/at_bench.svelte";
import type { NotTaken, Tap, Taps } from "../src/bench/taps";
import type { BenchRun, Problem } from "../src/wire/api";

vi.mock("../src/api/endpoints", () => ({ benchRun: vi.fn(), lookAgain: vi.fn(), tapped: vi.fn() }));

/** The device's storage, in memory. */
function storage() {
  let kept: Tap[] = [];
  let last = 0;
  let aside: NotTaken[] = [];
  const forget = async (gone: readonly Tap[]) => {
    kept = kept.filter(({ seq }) => !gone.some((tap) => tap.seq === seq));
  };
  const taps = {
    keep: async (tap: Omit<Tap, "seq">) => {
      last += 1;
      kept = [...kept, { ...tap, seq: last }];
      return { ...tap, seq: last };
    },
    waiting: async () => kept,
    forget,
    notTaken: async () => aside,
    setAside: async (gone: readonly Tap[], why: string) => {
      await forget(gone);
      aside = [...aside, { entries: gone.map(({ entry }) => entry), why }];
      return aside;
    },
  };
  return taps as unknown as Taps;
}
const refusal = (status: number, kind: Problem["kind"], sentence: string) =>
  new Refused(status, [{ kind, sentence }]);

beforeEach(() => {
  localStorage.clear();
  vi.mocked(api.tapped).mockReset();
});

test.each([
  ["the disk is full", 503, "failed"],
  ["another program writes to the notebook", 503, "failed"],
  ["the notebook may only be read", 409, "unreadable"],
  ["another notebook is open", 409, "another_notebook"],
] as const)("taps wait where %s, and are kept later", async (sentence, status, kind) => {
  const taps = storage();
  const bench = new AtBench(taps, "run");
  vi.mocked(api.tapped).mockRejectedValue(refusal(status, kind, sentence));

  await bench.tap({ what: "cuts", cuts: 1 });
  await bench.tap({ what: "cuts", cuts: 1 });
  await vi.waitFor(() => expect(bench.trouble).toBe(sentence));

  expect(bench.waiting).toHaveLength(2);
  expect(await taps.waiting()).toHaveLength(2);
  expect(bench.notTaken).toEqual([]);

  vi.mocked(api.tapped).mockReset();
  vi.mocked(api.tapped).mockResolvedValue({ entries: 2 } as unknown as BenchRun);
  await bench.send();

  const sent = vi.mocked(api.tapped).mock.calls.flatMap(([, { entries }]) => entries);
  expect(sent.map(({ cuts }) => cuts)).toEqual([1, 1]);
  expect(await taps.waiting()).toEqual([]);
  expect(bench.trouble).toBeUndefined();
});

test("what is of a notebook that is not open waits, and holds up nothing of the one that is", async () => {
  const taps = storage();
  const of = (run: string, notebook: string) =>
    taps.keep({ run, notebook, entry: { id: run, at_ms: 1, what: "cuts", cuts: 1 } });
  await of("other run", "A");
  await of("run", "B");
  vi.mocked(api.benchRun).mockResolvedValue({ entries: 1 } as unknown as BenchRun);
  vi.mocked(api.tapped).mockImplementation(async (_run, _entries, how) => {
    if (how?.notebook === "A") throw refusal(409, "another_notebook", "B is open.");
    return { entries: 1 } as unknown as BenchRun;
  });

  const bench = new AtBench(taps, "run");
  await bench.begin();
  bench.leave();

  expect(bench.run).toBeDefined();
  expect(bench.trouble).toBe("B is open.");
  expect((await taps.waiting()).map(({ run }) => run)).toEqual(["other run"]);
});

test("a tap that can never be taken is put aside, with why", async () => {
  const taps = storage();
  const bench = new AtBench(taps, "run");
  vi.mocked(api.tapped).mockRejectedValue(refusal(400, "bad_value", "That cannot be."));

  await bench.tap({ what: "cuts", cuts: 1 });

  await vi.waitFor(() => expect(bench.notTaken[0]?.why).toBe("That cannot be."));
  expect(bench.waiting).toEqual([]);
  expect(await taps.waiting()).toEqual([]);
  expect(await taps.notTaken()).toEqual(bench.notTaken);
});

test("only the program knows what is to be expected, and nobody waits for it", async () => {
  const bench = new AtBench(storage(), "run");
  vi.mocked(api.lookAgain).mockResolvedValue({ look_again: true });
  expect(await bench.surprises(3, 1040, "gf")).toBe(true);
  const typed = { cuts: 3, reading: 1040, unit: "gf" };
  expect(api.lookAgain).toHaveBeenCalledWith("run", typed, expect.any(AbortSignal));

  vi.mocked(api.lookAgain).mockRejectedValue(new Unanswered("Keenfall does not answer."));
  expect(await bench.surprises(3, 1040, "gf")).toBe(false);
});
