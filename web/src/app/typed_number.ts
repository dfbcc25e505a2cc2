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
