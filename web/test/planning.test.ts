import { describe, expect, test } from "vitest";
import {
  armChoices,
  askedLacks,
  bladesCalled,
  crossingWords,
  cuttingsCalled,
  type Draft,
  draftOf,
  emptyDraft,
  numbersIn,
  ofNamed,
  suggestedClaim,
  withPlace,
} from "../src/app/planning/draft";
import { choicesAsked, choicesIn, sameEdge } from "../src/app/planning/edges";
import { offersFor, offerWords, takeWords } from "../src/app/planning/measured";
import type { Shown } from "../src/app/shown_unit";
import {
  armsInWords,
  methodInWords,
  readingInWords,
  stopInWords,
} from "../src/components/plan_words";
import type { Edge, MeasuredArm, Plan, Trial } from "../src/wire/api";

const asKept: Shown = (unit) => ({ unit, kept: 1 });
const rope = { medium: "rope", checkpoint_cuts: [0, 1, 3] };
const { rest } = emptyDraft();
const plan = (arms: [string, Edge, number?][], cuttings = [rope]): Plan => ({
  ...rest,
  cuttings,
  arms: arms.map(([blade, edge, cutting = 0]) => ({ blade, edge, cutting })),
});
const coarse = { bevel_angle_per_side_deg: 20 };
const fine = { bevel_angle_per_side_deg: 15 };
const drafted = (changes: Partial<Draft>): Draft => ({
  ...emptyDraft(),
  blades: ["A", "B"],
  cuttings: [rope],
  ...changes,
});

describe("edges", () => {
  const two = { bevels: [15, 20], apexes: [], finishes: ["9 µm diamond", " ", "FEPA-F 220"] };

  test("are crossed by the program, from what they may vary in without blank finishes", () => {
    expect(choicesAsked(two)).toEqual({
      bevel_angles_per_side_deg: [15, 20],
      apex_angles_per_side_deg: [],
      finishes: ["9 µm diamond", "FEPA-F 220"],
      thickness_behind_edge_mm: undefined,
    });
  });

  test("lead back to what they were crossed from, in any order", () => {
    const crossed = [coarse, fine].flatMap((edge) =>
      ["FEPA-F 220", "9 µm diamond"].map((finish) => ({ ...edge, finish })),
    );

    expect(choicesIn(crossed)).toMatchObject({
      bevels: [20, 15],
      finishes: ["FEPA-F 220", "9 µm diamond"],
    });
    expect(choicesIn([{}])).toMatchObject({ bevels: [], apexes: [], finishes: [] });
  });

  test("that are no crossing lead back to nothing", () => {
    expect(
      choicesIn([
        { ...fine, finish: "9 µm" },
        { ...coarse, finish: "3 µm" },
      ]),
    ).toBeUndefined();
    expect(choicesIn([fine, {}])).toBeUndefined();
    const both = (bevel: number | undefined, apex: number): Edge => ({
      bevel_angle_per_side_deg: bevel,
      apex_angle_per_side_deg: apex,
    });
    expect(
      choicesIn([both(15, 20), both(15, 22), both(17, 20), both(undefined, 22)]),
    ).toBeUndefined();
    expect(choicesIn([fine, { ...fine, thickness_behind_edge_mm: 0.3 }])).toBeUndefined();
  });

  test("are the same whatever words are told with them", () => {
    expect(sameEdge({ ...fine, words: "15° per side", finish: "" }, fine)).toBe(true);
    expect(sameEdge(fine, coarse)).toBe(false);
  });
});

describe("a question", () => {
  const said = { claims: [{ words: "A outlasts B", worth_it_margin: 1.5 }] };

  test("needs blades and a medium, or a claim by itself", () => {
    expect(askedLacks(drafted({}))).toBeUndefined();
    expect(askedLacks(emptyDraft())).toMatch(/^Nothing is asked yet/);
    expect(askedLacks({ ...emptyDraft(), ...said })).toBeUndefined();
  });

  test("does not lose blades without a medium, or a medium without blades", () => {
    expect(askedLacks({ ...emptyDraft(), ...said, blades: ["A"] })).toMatch(/^What do they cut/);
    expect(askedLacks(drafted({ ...said, blades: [""] }))).toMatch(/^Which blades/);
  });
});

describe("a draft of a plan", () => {
  test("suggests a claim only where blades and a medium are named", () => {
    expect(suggestedClaim(emptyDraft(), 1.5)).toBe("");

    const named = drafted({
      blades: [" C ", "A"],
      cuttings: [{ ...rope, medium: " new sisal ", method: { motion: "slice" } }],
    });
    expect(suggestedClaim(named, 1.5)).toBe(
      "Slicing new sisal, C stays keen at least 1.5 times as long as A.",
    );
  });

  test("finds blades and edges of a plan again, and how the edges came to the blades", () => {
    const crossed = plan([
      ["A", fine],
      ["A", coarse],
      ["B", fine],
      ["B", coarse],
    ]);
    const own = plan([
      ["A", { ...fine, words: "15° per side" }],
      ["B", coarse],
    ]);
    const listed = plan([
      ["A", { ...fine, finish: "9 µm" }],
      ["A", { ...coarse, finish: "3 µm" }],
    ]);

    expect(draftOf({ claims: [], plan: crossed })).toMatchObject({
      blades: ["A", "B"],
      sharing: "crossed",
      choices: { bevels: [15, 20], finishes: [] },
    });
    expect(draftOf({ claims: [], plan: own })).toMatchObject({
      sharing: "own",
      edges: [fine, coarse],
    });
    expect(draftOf({ claims: [], plan: listed }).sharing).toBe("listed");
  });

  test("without arms is as one begins", () => {
    expect(draftOf({ claims: [], plan: plan([]) })).toMatchObject({
      blades: ["", ""],
      sharing: "crossed",
    });
    expect(draftOf(undefined).rest.stop.level).toBe(4);
  });

  describe("of a trial that was cut", () => {
    const series = (kind: string) => ({ kind }) as Trial["recorded"]["series"][number];
    const run = (blade: string, medium: string, read: number[]) =>
      ({ blade, medium, readings: read.map((of) => ({ series: of })) }) as never;
    const recorded = {
      counted: "strokes",
      series: [series("cord_draw"), series("thread_push")],
      runs: [run("B", "rope", [0, 1, 1]), run("A", "rope", [1]), run("B", "felt", [])],
    } as unknown as Trial["recorded"];
    const begun = {
      blades: ["B", "A"],
      cuttings: [
        { medium: "rope", checkpoint_cuts: [] },
        { medium: "felt", checkpoint_cuts: [] },
      ],
      rest: { counted: "strokes", reading: { kind: "thread_push" } },
    };
    const claim = { words: "B outlasts A", worth_it_margin: 2 };

    test("begins with its blades and media, and says nothing that may have been otherwise", () => {
      const draft = draftOf(undefined, recorded);

      expect(draft).toMatchObject(begun);
      expect(draft.cuttings[0]?.method).toBeUndefined();
      expect(draft.choices).toEqual({ bevels: [], apexes: [], finishes: [] });
      expect(draftOf({ claims: [claim] }, recorded)).toMatchObject({ ...begun, claims: [claim] });
      expect(draftOf({ claims: [], plan: plan([], []) }, recorded).blades).toEqual(["B", "A"]);
    });

    test("stays as it was planned", () => {
      const planned = plan([["C", {}]]);

      expect(draftOf({ claims: [], plan: planned }, recorded)).toMatchObject({
        blades: ["C"],
        cuttings: [rope],
        rest: { reading: rest.reading },
      });
    });

    test("is as one begins where nothing was read yet", () => {
      const uncut = { ...recorded, series: [], runs: [] };

      expect(draftOf(undefined, uncut).blades).toEqual(["", ""]);
    });
  });

  test("asks for the arms of each way that edges come to blades", () => {
    const edges = [fine, coarse];

    expect(
      armChoices(drafted({ choices: { bevels: [15, 20], apexes: [], finishes: [] } }), 1),
    ).toEqual({
      blades: ["A", "B"],
      edge_choices: {
        bevel_angles_per_side_deg: [15, 20],
        apex_angles_per_side_deg: [],
        finishes: [],
      },
      cuttings: 1,
      crossed: true,
    });
    expect(armChoices(drafted({ sharing: "listed", edges }), 2)).toMatchObject({
      edges,
      cuttings: 2,
      crossed: true,
    });
    expect(armChoices(drafted({ sharing: "own", edges: [fine] }), 1)).toMatchObject({
      edges: [fine, {}],
      crossed: false,
    });
  });

  test("says how many arms come of what", () => {
    const choices = { bevels: [15, 20], apexes: [], finishes: ["9 µm diamond"] };

    expect(crossingWords(drafted({ choices }), 4)).toBe(
      "2 blades × 2 angles × 1 finish × 1 medium: 4 arms.",
    );
    expect(crossingWords(drafted({ sharing: "own" }), 2)).toBe(
      "2 blades, each with its own edge × 1 medium: 2 arms.",
    );
  });

  test("keeps the edge of each blade where another is left out", () => {
    const own = drafted({ sharing: "own", blades: ["A", "B", "C"], edges: [fine, coarse, {}] });

    expect(bladesCalled(own, ["A", "C"])).toEqual({ blades: ["A", "C"], edges: [fine, {}] });
    expect(bladesCalled(own, ["A", "B", "D"]).edges).toEqual([fine, coarse, {}]);
  });

  test("keeps what is known of a medium where another is left out", () => {
    const felt = { medium: "felt", checkpoint_cuts: [0, 5, 10], lot: "7" };
    const two = drafted({ cuttings: [rope, felt] });

    expect(cuttingsCalled(two, ["felt"])).toEqual([felt]);
    expect(cuttingsCalled(two, ["rope", "thick felt"])[1]).toEqual({
      ...felt,
      medium: "thick felt",
    });
    expect(cuttingsCalled(two, ["rope", "felt", ""])[2]).toMatchObject({ checkpoint_cuts: [] });
  });

  test("says of each named medium what is taken for granted there, null for the usual", () => {
    const media = ["sisal", " ", "rope"].map((medium) => ({ ...rope, medium }));
    const three = drafted({ cuttings: media });

    expect(ofNamed(three, withPlace<number>(undefined, 2, 30))).toEqual([null, 30]);
    expect(ofNamed(three, withPlace<number>([10, null, 30], 0, undefined))).toEqual([null, 30]);
    expect(ofNamed(three, withPlace<number>(undefined, 1, 30))).toBeUndefined();
  });

  test("reads lists of numbers however they are parted, and refuses what is none", () => {
    expect(numbersIn("0, 1 3;7")).toEqual([0, 1, 3, 7]);
    expect(numbersIn("0,1,3,7,")).toEqual([0, 1, 3, 7]);
    expect(numbersIn("17.5, 20")).toEqual([17.5, 20]);
    expect(numbersIn("0, one")).toBeUndefined();
    // One number with a decimal comma, or two?
    expect(numbersIn("17,5")).toBeUndefined();
    expect(numbersIn("15 17,5")).toBeUndefined();
    expect(numbersIn("")).toEqual([]);
  });
});

describe("what was measured before", () => {
  const arm = (trial: string, medium: string, changes: Partial<MeasuredArm> = {}): MeasuredArm => ({
    trial_uid: trial,
    trial,
    blade: "A",
    words: "A",
    medium,
    kind: "thread_push",
    counted: "cuts",
    runs: 3,
    run_log_sd: { median: 0.166, lo95: 0.08, hi95: 0.39 },
    half_keenness_cuts: 61.7,
    to_be_assumed: { run_log_sd: 0.17, half_keenness_cuts: 62 },
    percent_words: "18 %",
    interval_words: "8 % to 48 %",
    sentence: "Your runs of A scatter by 18 %.",
    ...changes,
  });
  const planned = { uid: "this", medium: " rope ", kind: "thread_push" };
  const taken = (arms: MeasuredArm[], changes = {}) =>
    offersFor(arms, { ...planned, ...changes }).map((offer) => [
      offer.arm.trial,
      offer.halfKeennessCuts,
    ]);

  test("is offered in the same medium first, and of others the scatter only", () => {
    expect(taken([arm("one", "felt"), arm("two", "rope"), arm("three", "rope")])).toEqual([
      ["two", 62],
      ["three", 62],
      ["one", undefined],
    ]);
  });

  test("is not offered by another kind of reading, nor to the trial it was measured in", () => {
    const arms = [arm("one", "rope", { kind: "cord_draw" }), arm("this", "rope")];

    expect(taken(arms)).toEqual([]);
  });

  test("says no cuts of a plan that counts something else", () => {
    const strokes = [arm("one", "rope", { counted: "strokes" })];

    expect(taken(strokes)).toEqual([["one", undefined]]);
    expect(taken(strokes, { counted: "strokes" })).toEqual([["one", 62]]);
  });

  test("says where it was measured, by how many runs, and how well it is known", () => {
    const arms = [
      arm("My own hand", "rope", { method_words: "slice of 25 mm" }),
      arm("Felt", "felt"),
    ];
    const words = offersFor(arms, planned).map((offer) => [takeWords(offer), offerWords(offer)]);

    expect(words).toEqual([
      [
        "Take 18 %, as measured in My own hand (A, 3 runs)",
        "95 % interval 8 % to 48 %; half as keen after about 62 cuts; slice of 25 mm",
      ],
      [
        "Take 18 %, as measured in Felt (A in felt, 3 runs)",
        "95 % interval 8 % to 48 %; another medium, so only the scatter is taken",
      ],
    ]);
  });
});

describe("a plan in words", () => {
  test("names the medium of an arm where there are several", () => {
    expect(armsInWords(plan([["A", {}]]))).toEqual(["A"]);
    expect(armsInWords(plan([["A", {}, 1]], [rope, { ...rope, medium: "felt" }]))).toEqual([
      "A in felt",
    ]);
  });

  test("says how a medium is cut, as far as it is known", () => {
    const method = { motion: "slice" as const, cut_length_mm: 25, board: "soft board" };

    expect(methodInWords(rope, asKept)).toBe("");
    expect(methodInWords({ ...rope, method }, asKept)).toBe(
      "slice, 25 mm parted by one cut, before soft board",
    );
  });

  // 104 gf are 1.01989 N, 25.4 mm an inch, exactly; 60 N are 6118.3 gf (NIST SP 811 B.8).
  test("says lengths and readings in what is shown", () => {
    const told = {
      ...plan([]),
      start_gate: { target_reading: 104, tolerance_fraction: 0.12 },
      stop: { reading: 416, force_cap_newton: 60 },
    };
    const newtons: Shown = (unit) =>
      unit === "mm" ? { unit: "in", kept: 25.4 } : { unit: "N", kept: 1 / 9.80665e-3 };
    const grams: Shown = () => ({ unit: "gf", kept: 9.80665e-3 });
    const cut = { ...rope, method: { cut_length_mm: 100, edge_used_mm: 25.4 } };

    expect(methodInWords(cut, newtons)).toBe("3.94 in parted by one cut, on 1 in of the edge");
    expect(readingInWords(told, undefined, newtons)[0]).toContain("thread push in N, ");
    expect(readingInWords(told, undefined, newtons)[3]).toContain(
      "starts at 1.02 N, give or take 12 %",
    );
    expect(stopInWords(told, undefined, newtons)[1]).toBe("at 4.08 N");
    expect(stopInWords(told, undefined, grams)[2]).toBe("and never harder than 6120 gf");
  });

  test("says when a run ends", () => {
    const stopped = { ...plan([]), stop: { level: 4, force_cap_newton: 60 } };

    expect(stopInWords(stopped, undefined, asKept).filter(Boolean)).toEqual([
      "at 4 times its start reading",
      "and never harder than 60 N",
      "at its last checkpoint at the latest",
    ]);
  });
});
