// The key that lets this page ask: it stands in the opened address and is kept for the origin.

const place = "keenfall.key";

/** Takes the key out of the address, so that it is neither seen nor kept in the history;
    whether there was one. */
export function takeKey(here: Location, history: History, kept: Storage): boolean {
  const given = taken("key", here, history);
  if (given === undefined) return false;
  keepKey(kept, given);
  return true;
}

/** The code by which a device asks to be let in, out of the address as well. */
export const takeCode = (here: Location, history: History): string | undefined =>
  taken("code", here, history);

export function keepKey(kept: Storage, key: string): void {
  kept.setItem(place, key);
}

function taken(name: string, here: Location, history: History): string | undefined {
  const given = new URLSearchParams(here.hash.slice(1)).get(name);
  if (given === null) return undefined;
  history.replaceState(history.state, "", here.pathname + here.search);
  return given;
}

export function heldKey(kept: Storage): string {
  return kept.getItem(place) ?? "";
}
