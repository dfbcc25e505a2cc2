// Numbers as they are typed: with a decimal point or comma, and with or without the unit of their field.

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");
const oneMicro = (text: string) => text.replace(/[µμ]m/g, "um");

/** Without the field's own unit behind a number: of "° per side" that is "°", too. Others stay. */
export function withoutUnit(text: string, unit: string | undefined): string {
  if (!unit) return text;
  const own = oneMicro(unit);
  const names = [own, own.split(" ")[0] ?? own].map(escaped).join("|");
  return oneMicro(text).replace(new RegExp(`([\\d.,])\\s*(?:${names})(?=[\\s,;]|$)`, "g"), "$1");
}

const asNumber = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i;

/** Nothing where it is no number, or has a unit that is not the field's. */
export function numberTyped(text: string, unit?: string): number | undefined {
  const bare = withoutUnit(text.trim(), unit).trim();
  if (!asNumber.test(bare)) return undefined;
  const number = Number(bare.replace(",", "."));
  return Number.isFinite(number) ? number : undefined;
}

/** A number with what it may be off by: 59 ± 1. */
export interface Spread {
  middle: number;
  half: number;
}

const between = /^(.*[\d.,])\s*(?:-|–|to)\s*([\d.,].*)$/;
const giveOrTake = /^(.*[\d.,])\s*(?:±|\+\/?-)\s*([\d.,].*)$/;
const unrounded = (number: number): number => Number(number.toPrecision(12));

/** "58-60" and "60-58" as 59 ± 1, "58 ± 1" as it says; nothing where it is neither, or no range. */
export function spreadTyped(text: string, unit?: string): Spread | undefined {
  const bare = withoutUnit(text.trim(), unit).trim();
  const parts = giveOrTake.exec(bare) ?? between.exec(bare);
  const [first, second] = [numberTyped(parts?.[1] ?? ""), numberTyped(parts?.[2] ?? "")];
  if (first === undefined || second === undefined) return undefined;
  if (giveOrTake.test(bare)) return { middle: first, half: second };
  if (second === first) return undefined;
  return { middle: unrounded((first + second) / 2), half: unrounded(Math.abs(second - first) / 2) };
}

/** Without the ± that says what the field says already. */
export const withoutPlusMinus = (text: string): string => text.replace(/^\s*(?:±|\+\/?-)\s*/, "");

/** What a number may be; each absent: anything. */
export interface Bounds {
  least?: number;
  above?: number;
  below?: number;
  whole?: boolean;
}

export const within = (number: number, { least, above, below, whole }: Bounds): boolean =>
  (least === undefined || number >= least) &&
  (above === undefined || number > above) &&
  (below === undefined || number < below) &&
  (!whole || Number.isInteger(number));

/** "A whole number, 2 or more." */
export function neededWords({ least, above, below, whole }: Bounds): string {
  const number = `A ${whole ? "whole " : ""}number`;
  const ends = [
    above === undefined ? "" : `above ${above}`,
    below === undefined ? "" : `below ${below}`,
  ].filter(Boolean);
  const between = [number, ends.join(" and ")].filter(Boolean).join(" ");
  return least === undefined ? `${between}.` : `${between}, ${least} or more.`;
}
