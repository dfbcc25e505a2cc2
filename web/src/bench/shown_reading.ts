// A reading that was worked out (a median, a limit of the gate), with as many figures as say anything.

/** Tens and more to the place asked for; below that three figures: 118 gf, 104.5 gf, 1.02 N. */
export function shownReading(reading: number, places: 0 | 1 = 1): number {
  return Math.abs(reading) >= 10 ? Number(reading.toFixed(places)) : Number(reading.toPrecision(3));
}
