import { describe, expect, test } from "vitest";
import { asSent, shelves, thingWords, valueAt, withValue } from "../src/app/kit_shelves";
import { fileName } from "../src/app/saved_file";
import type { Shown } from "../src/app/shown_unit";
import { tableSource } from "../src/app/table_source";
import { forgetUnsent, keepUnsent, unsent } from "../src/app/unsent";
import { digestIn, shortDigests } from "../src/components/digest_words";
import { answersOn } from "../src/components/medium_answers";
import { nextStep, pathSteps } from "../src/components/path_steps";
import { percent, percents } from "../src/components/percent";
import { checkpointsOf, circumstances, inAlready, struckWords } from "../src/components/run_words";
import { unparted } from "../src/components/sentence_words";
import { inWords, sealedWords, timeLeft } from "../src/components/time_words";
import type { TrialCard } from "../src/wire/api";
import { madeReport } from "./made_report";

const asKept: Shown = (unit) => ({ unit, kept: 1 });

describe("what is said of time", () => {
  test("of today needs no date", () => {
    const now = new Date(2026, 10, 27, 15, 0);
    const at = new Date(2026, 10, 27, 9, 5).toISOString();

    expect(inWords(at, now)).toBe("today at 09:05");
    expect(inWords(new Date(2026, 4, 3, 14, 5).toISOString(), now)).toBe("3 May 2026 at 14:05");
    expect(inWords("some day", now)).toBe("some day");
  });

  test("of sealing is the day and the time, also on that day", () => {
    const at = new Date(2026, 10, 28, 9, 5).toISOString();

    expect(sealedWords(at, true)).toBe("Sealed on 28 November 2026 at 09:05; cut next.");
    expect(sealedWords(at, false)).toBe("Sealed on 28 November 2026 at 09:05.");
  });

  test.each([
    [0.4, "a moment"],
    [12.2, "about 13 seconds"],
    [58, "about a minute"],
    [61, "about 2 minutes"],
  ])("left, %d seconds, is rounded up", (seconds, words) => {
    expect(timeLeft(seconds)).toBe(words);
  });
});

test("a chance is said as no more than it is known", () => {
  expect([0, 0.001, 0.5, 0.997, 1].map(percent)).toEqual([
    "0 %",
    "under 1 %",
    "50 %",
    "over 99 %",
    "100 %",
  ]);
});

test.each([
  [
    [0.335, 0.335, 0.33, 0, 0, 0],
    ["34 %", "33 %", "33 %", "0 %", "0 %", "0 %"],
  ],
  [
    [0.446, 0.446, 0.108, 0, 0, 0],
    ["45 %", "44 %", "11 %", "0 %", "0 %", "0 %"],
  ],
  [
    [0.996, 0.002, 0.002, 0, 0, 0],
    ["over 99 %", "under 1 %", "under 1 %", "0 %", "0 %", "0 %"],
  ],
  [
    [0.29, 0.71, 0, 0, 0, 0],
    ["29 %", "71 %", "0 %", "0 %", "0 %", "0 %"],
  ],
])("chances of one thing or another, %j, add up to 100 %%", (chances, words) => {
  expect(percents(chances)).toEqual(words);
});

test("a digest is as long as it takes to tell it from others", () => {
  const digest = "0123456789ab".padEnd(64, "c");

  expect(shortDigests(`undo: seal the plan, SHA-256 ${digest}.`)).toBe(
    "undo: seal the plan, SHA-256 0123456789ab….",
  );
  expect(digestIn(`seal, SHA-256 ${digest}`)).toBe(digest);
  expect(digestIn("take a table")).toBeUndefined();
});

test.each([
  ["The matting bench", "the-matting-bench.html"],
  ["Säge & Seil / 3", "sage-seil-3.html"],
  ["…", "trial.html"],
])("a report of %s is kept as %s", (title, name) => {
  expect(fileName(title, "html")).toBe(name);
});

describe("the path of a trial", () => {
  const step = (name: "ask" | "plan" | "judge" | "tell") =>
    ({ step: name, state: "waiting", words: name }) as const;
  const card = (runs: number): TrialCard => ({
    uid: "1",
    name: "rope",
    runs,
    readings: 7 * runs,
    steps: [step("ask"), step("plan"), step("judge"), step("tell")],
    next: step("judge"),
  });

  test("has entering before judging, done once there are runs", () => {
    expect(pathSteps(card(1)).map(({ name }) => name)).toEqual([
      "Ask",
      "Plan",
      "Enter",
      "Judge",
      "Tell",
    ]);
    expect(pathSteps(card(1))[2]).toMatchObject({ state: "done", words: "1 run, 7 readings" });
    expect(pathSteps({ ...card(0), next: step("ask") })[2]).toMatchObject({
      state: "ready",
      words: "Nothing is entered yet.",
    });
    expect(pathSteps(undefined)).toEqual([]);
  });

  test("leads to entering while there is nothing to judge", () => {
    expect(nextStep(card(0))).toBe("enter");
    expect(nextStep(card(2))).toBe("judge");
    const [, , enter, judge] = pathSteps(card(0));
    expect(enter).toMatchObject({ step: "enter", state: "next", words: "judge" });
    expect(judge).toMatchObject({ state: "waiting", words: "There are no readings yet." });
  });
});

describe("a thing of the kit", () => {
  test("is read and changed by the place of each of its values", () => {
    const blade = withValue({ name: "A" }, "hardness.reading", 58);

    expect(valueAt(blade, "hardness.reading")).toBe(58);
    expect(withValue(blade, "hardness.reading", undefined)).toEqual({ name: "A", hardness: {} });
    expect(withValue(blade, "name", "")).toEqual({ hardness: { reading: 58 } });
  });

  test("is sent without what only answers hold, and with the usual scale", () => {
    const thing = { name: "A", used_in: ["rope"], own: true, hardness: { reading: 58 } };

    expect(asSent(thing)).toEqual({ name: "A", hardness: { reading: 58, scale: "HRC" } });
    expect(asSent({ name: "A", hardness: { scale: "HV" } })).toEqual({ name: "A" });
  });

  test("is said by what is known of it", () => {
    const hardness = { reading: 61, scale: "HRC", error: 0.5 };

    expect(thingWords("blades", { name: "C", steel: "X153CrMoV12", hardness }, asKept)).toBe(
      "X153CrMoV12, 61 ± 0.5 HRC",
    );
    expect(thingWords("media", { name: "rope" }, asKept)).toBe("");
    const lot = { medium: "rope", name: "roll 3", length_m: 30.48 };
    expect(thingWords("lots", lot, asKept)).toBe("of rope, 30.48 m");
    expect(thingWords("lots", lot, () => ({ unit: "ft", kept: 0.3048 }))).toBe("of rope, 100 ft");
    expect(shelves.map(({ name }) => name)).toHaveLength(7);
  });
});

describe("a run", () => {
  const { trial } = madeReport();
  const [run] = trial.runs;
  if (!run) throw new Error("made without a run");

  test("shows its readings by checkpoint, the unit said once", () => {
    const again = {
      ...run,
      readings: [...run.readings, { series: 0, cuts: 0, reading: 99, station: "heel" }],
    };
    const [first] = checkpointsOf(again, trial.series);

    expect(first?.cuts).toBe(0);
    expect(first?.readings.map(({ short }) => short)).toEqual(["100", "99 heel"]);
    expect(first?.readings[1]?.words).toBe("99 gf heel");
    expect(first?.readings[1]?.place).toBe(run.readings.length);
  });

  test("calls a lot by its name, once", () => {
    expect(circumstances({ ...run, medium_lot: "lot 2" })).toMatch(/, lot 2[,.]/);
    expect(circumstances({ ...run, medium_lot: "roll 3" })).toMatch(/, lot roll 3[,.]/);
  });
});

describe("a file", () => {
  const file = (name: string, ...bytes: number[]) => ({
    name,
    arrayBuffer: async () => new Uint8Array(bytes).buffer,
  });

  test("goes byte for byte, whatever it is, so that its reading is the program's affair", async () => {
    const text = file("a.csv", 0x72, 0xf6);

    expect(await tableSource(text)).toEqual({ name: "a.csv", base64: "cvY=" });
  });

  test("of a spreadsheet goes as it is", async () => {
    const sheet = file("a.XLSX", 0x50, 0x4b, 3, 4, 0xff);

    expect(await tableSource(sheet)).toEqual({ name: "a.XLSX", base64: "UEsDBP8=" });
  });
});

test("what is unsent is there again until it is sent", () => {
  keepUnsent(sessionStorage, "strike", "slipped");
  expect(unsent(sessionStorage, "strike")).toBe("slipped");

  forgetUnsent(sessionStorage, "strike");
  expect(unsent(sessionStorage, "strike")).toBeUndefined();

  sessionStorage.setItem("keenfall.unsent.strike", "{half");
  expect(unsent(sessionStorage, "strike")).toBeUndefined();
});

test("striking more than a reading means those at its cuts, not all that come later", () => {
  const { wider, corrected } = struckWords.reading(
    { place: 0, words: "104 gf", short: "104", reading: 104, unit: "gf" },
    20,
    "cuts",
  );
  expect(corrected).toEqual({ reading: 104, unit: "gf" });
  expect(wider?.words).toBe("all readings at 20 cuts");
});

test("a lot without a length says none", () => {
  const lot = { name: "roll 1", medium: "rope" };
  expect(thingWords("lots", lot, (unit) => ({ unit, kept: 1 }))).toBe("of rope");
});

test("an answer stands under its own medium, where others are compared with nothing", () => {
  const told = { medium: 1, on: "On rope, slice", answers: [], gathered: [], remarks: [] };
  const answers = { terms: { words: [] }, media: [told], across_media: [] };

  expect(answersOn(answers, 0)).toBeUndefined();
  expect(answersOn(answers, 1)).toBe(told);
});

test("runs that are in are named by their edge, and counted where they are many", () => {
  const run = (name: string, blade = "A") => ({ name, blade, medium: "rope" });

  expect(inAlready([run("1"), run("1", "B"), run("2")])).toBe(
    "runs 1 and 2 of A on rope; run 1 of B on rope",
  );
  expect(inAlready(["1", "2", "3", "5", "6", "3 (again)"].map((name) => run(name)))).toBe(
    "runs 1 to 3, 5, 6 and 3 (again) of A on rope",
  );
  expect(inAlready(Array.from({ length: 41 }, () => run("1")))).toBe("41 runs");
});

test("a number is not parted from its unit at the end of a line", () => {
  expect(unparted("34 (3.4 m), 90 % of 12 gf, 3 more, 2 minutes")).toBe(
    "34 (3.4\u00a0m), 90\u00a0% of 12\u00a0gf, 3 more, 2 minutes",
  );
});
