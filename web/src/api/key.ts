// The key that lets this page ask: it stands in the opened address and is kept for the origin.

const place = "keenfall.key";

/** Takes the key out of the address, so that it is neither seen nor kept in the history;
    whether there was one. */
export function takeKey(here: Location, history: History, kept: Storage): boolean {
  const given = new URLSearchParams(here.hash.slice(1)).get("key");
  if (given === null) return false;
  kept.setItem(place, given);
  history.replaceState(history.state, "", here.pathname + here.search);
  return true;
}

export function heldKey(kept: Storage): string {
  return kept.getItem(place) ?? "";
}
