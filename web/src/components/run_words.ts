// The readings of a run by checkpoint, and what a strike is called.

import type { Strike, Trial } from "../wire/api";

type Recorded = Trial["recorded"];
type Run = Recorded["runs"][number];

export interface ReadingShown {
  /** Index into the run's readings. */
  place: number;
  /** "131 gf", "131 gf heel side" */
  words: string;
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
  /** The same checkpoint's readings together, where a reading is meant. */
  wider?: Struck;
}

export function checkpointsOf(run: Run, series: Recorded["series"]): CheckpointShown[] {
  const shown = new Map<number, ReadingShown[]>();
  run.readings.forEach((reading, place) => {
    const unit = series[reading.series]?.unit ?? "";
    const words = [reading.reading, unit, reading.station].filter((part) => part !== undefined);
    const { struck, doubtful } = reading;
    const here = shown.get(reading.cuts) ?? [];
    here.push({ place, words: words.join(" "), struck, doubtful });
    shown.set(reading.cuts, here);
  });
  return [...shown].sort(([a], [b]) => a - b).map(([cuts, readings]) => ({ cuts, readings }));
}

export const struckWords = {
  reading: ({ place, words }: ReadingShown, cuts: number, counted: string): Struck => ({
    what: { reading: place },
    words: `the reading ${words} after ${cuts} ${counted}`,
    wider: { what: { cuts }, words: `all readings after ${cuts} ${counted}` },
  }),
  run: (): Struck => ({ what: {}, words: "the whole run" }),
};
