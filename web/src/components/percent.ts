// A chance in percent, as no more than it is known: "under 1 %", "84 %", "over 99 %".

export function percent(chance: number): string {
  const rounded = Math.round(chance * 100);
  if (rounded < 1) return chance > 0 ? "under 1 %" : "0 %";
  return rounded > 99 && chance < 1 ? "over 99 %" : `${rounded} %`;
}
