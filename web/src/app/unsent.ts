// What was typed and not sent yet, so that neither a stopped program nor a closed page loses it.

/** Whether it is kept; where the browser's room is full, what was typed still stands on the page. */
export function keepUnsent(kept: Storage, place: string, typed: unknown): boolean {
  try {
    kept.setItem(`keenfall.unsent.${place}`, JSON.stringify(typed));
    return true;
  } catch {
    return false;
  }
}

export function unsent<T>(kept: Storage, place: string): T | undefined {
  const written = kept.getItem(`keenfall.unsent.${place}`);
  if (written === null) return undefined;
  try {
    return JSON.parse(written);
  } catch {
    return undefined;
  }
}

export function forgetUnsent(kept: Storage, place: string): void {
  kept.removeItem(`keenfall.unsent.${place}`);
}
