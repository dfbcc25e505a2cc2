// In which units readings and lengths are told: chosen by the person, kept for the origin, and said
// with every request.

const place = "keenfall.told-in";

export interface ToldIn {
  /** "N"; absent: as recorded. */
  force?: string;
  /** "in"; absent: as recorded. */
  length?: string;
}

export function keptToldIn(kept: Storage): ToldIn {
  const [force, length] = (kept.getItem(place) ?? "").split(",");
  return { force: force || undefined, length: length || undefined };
}

export function keepToldIn(kept: Storage, { force = "", length = "" }: ToldIn): void {
  if (force || length) kept.setItem(place, `${force},${length}`);
  else kept.removeItem(place);
}

/** As the program takes it: "N,in"; nothing where all is told as recorded. */
export function toldInHeader({ force, length }: ToldIn): Record<string, string> {
  const units = [force, length].filter((unit) => unit !== undefined);
  return units.length > 0 ? { "X-Keenfall-Told-In": units.join(",") } : {};
}
