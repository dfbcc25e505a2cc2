// Where curves can be read off. Edges cut to different lengths have curves that end apart, so a
// point is found by its cuts, never by its place in the list.

import type { ArmView } from "./view";

/** Every count of cuts at which any of the curves has a point, rising. */
export function placesOf(arms: ArmView[]): number[] {
  const places = new Set(arms.flatMap(({ arm }) => arm.curve.map(({ cuts }) => cuts)));
  return [...places].sort((a, b) => a - b);
}

export function readingAt({ arm }: ArmView, cuts: number | undefined) {
  return arm.curve.find((point) => point.cuts === cuts);
}
