// Whether texts of a page say the numbers of its JSON, rounded.

import { expect } from "vitest";

/** The numbers written in a text, each as it is written. */
export const written = (text: string | undefined) =>
  [...(text ?? "").matchAll(/\d+(\.\d+)?/g)].map(([found]) => found);

/** Whether a number as written is this one, rounded to the figures shown. */
export function rounds(text: string, number: number): boolean {
  const decimals = text.split(".")[1]?.length ?? 0;
  const step = Math.max(10 ** -decimals, number >= 1000 ? number / 200 : 0);
  return Math.abs(Number(text) - number) <= step * 0.501;
}

/** A cell begins with these numbers, in this order. */
export function says(cell: string | undefined, numbers: number[]) {
  const said = written(cell);
  expect(said.length).toBeGreaterThanOrEqual(numbers.length);
  numbers.forEach((number, place) => {
    expect(rounds(said[place] ?? "", number), `${cell} says ${number}`).toBe(true);
  });
}

/** Every number of a text is one of these. */
export function saysOnly(text: string, numbers: number[]) {
  for (const said of written(text)) {
    expect(
      numbers.some((number) => rounds(said, number)),
      `${said} in: ${text}`,
    ).toBe(true);
  }
}
