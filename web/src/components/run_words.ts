// A run in words: how it was cut, its readings by checkpoint, and what a strike is called.

import type { Strike, Trial } from "../wire/api";

type Recorded = Trial["recorded"];
export type RecordedRun = Recorded["runs"][number];

export interface ReadingShown {
  /** Index into the run's readings. */
  place: number;
  /** "131 gf", "131 gf heel side" */
  words: string;
  /** The same beneath a head that says the unit: "131", "131 heel side". */
  short: string;
  /** The number alone, and its unit. */
  reading: number;
  unit?: string;
  struck?: string;
  doubtful?: string;
}

export interface CheckpointShown {
  cuts: number;
  readings: ReadingShown[];
}

/** What is to be struck out, and how that is said. */
export interface Struck {
  what: Pick<Strike, "reading" | "cuts">;
  words: string;
  /** A reading can be corrected instead: what it says, and in which unit. */
  corrected?: { reading: number; unit?: string };
  /** The same checkpoint's readings together, where a reading is meant. */
  wider?: Struck;
}

/** Of more, only how many there are. */
const mostNamed = 40;

const follows = (name: string, before: string | undefined) =>
  /^\d+$/.test(name) && Number(name) === Number(before) + 1;

/** "1 to 3" of three runs or more that are numbered on. */
function gathered(names: readonly string[]): string[] {
  const stretches: string[][] = [];
  for (const name of names) {
    const last = stretches.at(-1);
    if (last && follows(name, last.at(-1))) last.push(name);
    else stretches.push([name]);
  }
  return stretches.flatMap((of) => (of.length > 2 ? [`${of[0]} to ${of.at(-1)}`] : of));
}

/** "runs 1 to 3 of A on rope; run 1 of B on rope" */
export function inAlready(runs: readonly Pick<RecordedRun, "name" | "blade" | "medium">[]): string {
  if (runs.length > mostNamed) return `${runs.length} runs`;
  const names = new Map<string, string[]>();
  for (const { name, blade, medium } of runs) {
    const of = `${blade} on ${medium}`;
    names.set(of, [...(names.get(of) ?? []), name]);
  }
  const list = new Intl.ListFormat("en-GB");
  return [...names]
    .map(
      ([of, which]) => `run${which.length > 1 ? "s" : ""} ${list.format(gathered(which))} of ${of}`,
    )
    .join("; ");
}

const joined = (...parts: (string | number | undefined)[]) =>
  parts.filter((part) => part !== undefined && part !== "").join(" ");

/** Absent where the run was read in more than one. */
export function oneUnit(run: RecordedRun, series: Recorded["series"]): string | undefined {
  const units = new Set(run.readings.map((reading) => series[reading.series]?.unit));
  return units.size === 1 ? [...units][0] : undefined;
}

export function checkpointsOf(run: RecordedRun, series: Recorded["series"]): CheckpointShown[] {
  const shown = new Map<number, ReadingShown[]>();
  const shared = oneUnit(run, series);
  run.readings.forEach(({ reading, station, cuts, struck, doubtful, ...of }, place) => {
    const unit = series[of.series]?.unit;
    const words = joined(reading, unit, station);
    const short = shared === undefined ? words : joined(reading, station);
    const here = shown.get(cuts) ?? [];
    here.push({ place, words, short, reading, unit, struck, doubtful });
    shown.set(cuts, here);
  });
  return [...shown].sort(([a], [b]) => a - b).map(([cuts, readings]) => ({ cuts, readings }));
}

/** "lot 3" of "3", and of "lot 3". */
const named = (what: string, name: string | undefined) =>
  name && (name.toLowerCase().startsWith(what) ? name : `${what} ${name}`);

export function circumstances(run: RecordedRun): string {
  const said = [
    run.medium,
    run.condition,
    run.edge_words,
    run.method_words,
    named("specimen", run.specimen),
    named("lot", run.medium_lot),
    named("block", run.block),
    run.order !== undefined && `number ${run.order} in order`,
    run.date,
    run.operator && `cut by ${run.operator}`,
  ];
  return `On ${said.filter(Boolean).join(", ")}.`;
}

export const struckWords = {
  reading: (
    { place, words, reading, unit }: ReadingShown,
    cuts: number,
    counted: string,
  ): Struck => ({
    what: { reading: place },
    words: `the reading ${words} after ${cuts} ${counted}`,
    corrected: { reading, unit },
    wider: { what: { cuts }, words: `all readings at ${cuts} ${counted}` },
  }),
  run: (): Struck => ({ what: {}, words: "the whole run" }),
};
