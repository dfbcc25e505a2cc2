// Numbers on axes and beside marks, rounded to what they are worth.

/** An axis value as short as it can be said: 0.5, 1, 1.5, 200. */
export function axisNumber(number: number): string {
  return String(Number(number.toPrecision(4)));
}

const stepsOfADecade = [
  [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8],
  [1, 1.5, 2, 3, 4, 6, 8],
  [1, 1.5, 2, 3, 5, 7],
  [1, 2, 5],
  [1, 3],
  [1],
];

/** Multiples of a round step from `low` to `high`, at most `most`. */
function evenTicks(low: number, high: number, most: number): number[] {
  const rough = (high - low) / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((size) => size * power).find((size) => size >= rough) ?? rough;
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  const count = Math.max(0, last - first + 1);
  return Array.from({ length: count }, (_, place) =>
    Number(((first + place) * step).toPrecision(6)),
  );
}

/** Whole numbers from `low` to `high` worth a tick, at most `most` or two. */
export function wholeTicks(low: number, high: number, most: number): number[] {
  return evenTicks(low, high, Math.min(most, high - low)).filter(Number.isInteger);
}

/** Values worth a tick on a logarithmic axis from `low` to `high` (above 0), at most `most`. */
export function logTicks(low: number, high: number, most: number): number[] {
  // On a short stretch of a logarithmic axis even steps look even, and there are more of them.
  if (high / low < 3) return evenTicks(low, high, most);
  const decades = (steps: number[]): number[] => {
    const ticks: number[] = [];
    for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) {
      for (const step of steps) {
        const tick = Number((step * 10 ** power).toPrecision(6));
        if (tick >= low * 0.999 && tick <= high * 1.001) ticks.push(tick);
      }
    }
    return ticks;
  };
  const finest = stepsOfADecade.map(decades).find((ticks) => ticks.length <= most);
  return finest ?? thinned(decades([1]), most);
}

/** Every so many of `ticks`, so that at most `most` are left; the first stays. */
function thinned(ticks: number[], most: number): number[] {
  const step = Math.ceil(ticks.length / most);
  return ticks.filter((_, index) => index % step === 0);
}

/** From a little below the least to a little above the greatest of positive numbers. */
export function around(values: number[]): [number, number] {
  const positive = values.filter((value) => value > 0);
  if (positive.length === 0) return [0.5, 2];
  const low = Math.min(...positive);
  const high = Math.max(...positive);
  const room = low === high ? 1.3 : 1.06;
  return [low / room, high * room];
}

/** Those of rising `values` that lie at least `gap` apart where `place` puts them, the last too. */
export function spacedOut(
  values: number[],
  place: (value: number) => number,
  gap: number,
): number[] {
  const kept: number[] = [];
  const last = values.at(-1);
  if (last === undefined) return kept;
  for (const value of values) {
    const before = kept.at(-1);
    const far = before === undefined || place(value) - place(before) >= gap;
    if (far && (value === last || place(last) - place(value) >= gap)) kept.push(value);
  }
  if (kept.at(-1) !== last) kept.push(last);
  return kept;
}

/** As `text`, or its first part and an ellipsis where it is longer than `most` characters. */
export function shortened(text: string, most: number): string {
  const characters = [...text];
  return characters.length <= most ? text : `${characters.slice(0, most - 1).join("")}…`;
}
