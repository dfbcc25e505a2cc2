// Where curves can be read off. Edges cut to different lengths have curves that end apart, so a
// point is found by its cuts, never by its place in the list.

import type { ArmView } from "./view";

/** Every count of cuts at which any of the curves has a point, rising. */
export function placesOf(arms: ArmView[]): number[] {
  const places = new Set(arms.flatMap(({ arm }) => arm.curve.map(({ cuts }) => cuts)));
  return [...places].sort((a, b) => a - b);
}

function toldAt({ arm, curveWords }: ArmView, cuts: number | undefined) {
  return curveWords[arm.curve.findIndex((point) => point.cuts === cuts)];
}

/** What the arm's curve reads there, in words. */
export function wordsAt(arm: ArmView, cuts: number | undefined): string {
  return toldAt(arm, cuts)?.reading_words ?? "is not carried so far";
}

/** "14 cuts": the place as any of the curves has it. */
export function placeWords(arms: ArmView[], cuts: number | undefined): string {
  return arms.flatMap((arm) => toldAt(arm, cuts)?.cuts_words ?? [])[0] ?? "";
}
