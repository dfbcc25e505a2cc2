// Chances in percent, as no more than they are known: "under 1 %", "84 %", "over 99 %".

const words = (whole: number, chance: number): string => {
  if (whole < 1) return chance > 0 ? "under 1 %" : "0 %";
  return whole > 99 && chance < 1 ? "over 99 %" : `${whole} %`;
};

export const percent = (chance: number): string => words(Math.round(chance * 100), chance);

/** Of chances that add up to 1, in whole percent that add up to 100: what is left over when each is rounded
    down goes to those that were rounded most. */
export function percents(chances: number[]): string[] {
  const hundredths = chances.map((chance) => chance * 100);
  const whole = hundredths.map(Math.floor);
  const sum = (numbers: number[]) => numbers.reduce((all, one) => all + one, 0);
  const rest = Math.round(sum(hundredths)) - sum(whole);
  const left = (at: number) => (hundredths[at] ?? 0) - (whole[at] ?? 0);
  const raised = chances
    .map((_, at) => at)
    .sort((a, b) => left(b) - left(a))
    .slice(0, rest);
  return chances.map((chance, at) =>
    words((whole[at] ?? 0) + (raised.includes(at) ? 1 : 0), chance),
  );
}
