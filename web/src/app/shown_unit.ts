// The unit that a number is typed and shown in on a form, by the program's own table. What is kept stays in the
// unit it is kept in.

import type { ToldIn } from "../api/told_in";
import type { App } from "../wire/api";

export interface ShownUnit {
  unit: string | undefined;
  /** One of the shown unit is so many of what is kept. */
  kept: number;
}

/** What a number that is kept in a unit is shown in. */
export type Shown = (unit: string | undefined) => ShownUnit;

type Known = App["units"];

/** `unit`: what the number is kept in; units that are not told otherwise stay as they are. */
export function shownUnit(unit: string | undefined, chosen: ToldIn, known?: Known): ShownUnit {
  const asKept = { unit, kept: 1 };
  const length = known?.length.find((one) => one.unit === chosen.length);
  if (length && unit === "mm") return { unit: length.unit, kept: length.mm };
  if (length && unit === "m") return { unit: length.long_unit, kept: length.long_m };
  const from = known?.force.find((one) => one.unit === unit);
  const to = known?.force.find((one) => one.unit === chosen.force);
  return from && to ? { unit: to.unit, kept: to.newton / from.newton } : asKept;
}

const [fewestFigures, mostFigures] = [3, 6];

/** What is kept of a typed number: 0.015 in are 0.381 mm. */
export const keptOf = (typed: number, { kept }: ShownUnit): number =>
  kept === 1 ? typed : Number((typed * kept).toPrecision(mostFigures));

const decimalsOf = (number: number) => String(number).split(".")[1]?.length ?? 0;

/**
 * The number as it is shown, as the program tells it: with the fewest figures, three at least, that give back
 * what is kept, at its own decimals.
 */
export function shownOf(number: number, { kept }: ShownUnit): number {
  if (kept === 1 || number === 0) return number;
  const decimals = decimalsOf(number);
  let shown = number;
  for (let figures = fewestFigures; figures <= mostFigures; figures += 1) {
    shown = Number((number / kept).toPrecision(figures));
    if ((shown * kept).toFixed(decimals) === number.toFixed(decimals)) break;
  }
  return shown;
}

/** "3.94 in" */
export const shownWords = (number: number, shown: ShownUnit): string =>
  [shownOf(number, shown), shown.unit].filter(Boolean).join(" ");
