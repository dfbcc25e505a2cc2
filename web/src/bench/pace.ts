// How a person counts at the bench: the cuts that a piece gives, and a steady beat. Kept in this browser.

const place = "keenfall.bench.pace";

export interface Pace {
  /** 0: pieces are not counted at one press. */
  pieceCuts: number;
  beatSeconds: number;
}

export function keptPace(kept: Storage): Pace {
  const usual = { pieceCuts: 0, beatSeconds: 4 };
  try {
    return { ...usual, ...JSON.parse(kept.getItem(place) ?? "{}") };
  } catch {
    return usual;
  }
}

export function keepPace(kept: Storage, pace: Pace): void {
  kept.setItem(place, JSON.stringify(pace));
}
