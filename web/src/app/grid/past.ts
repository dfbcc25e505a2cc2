// The states that a sheet went through, to go back and forth. Typing within one cell is one step.

export interface Past<T> {
  readonly before: readonly T[];
  readonly now: T;
  readonly after: readonly T[];
  /** What the last step was about; steps about the same thing are one. */
  readonly about?: string;
}

const most = 200;

export const begun = <T>(now: T): Past<T> => ({ before: [], now, after: [] });

export function stepped<T>(past: Past<T>, now: T, about?: string): Past<T> {
  if (about !== undefined && about === past.about) return { ...past, now, after: [] };
  return { before: [...past.before, past.now].slice(-most), now, after: [], about };
}

export function undone<T>(past: Past<T>): Past<T> {
  const now = past.before.at(-1);
  if (now === undefined) return past;
  return { before: past.before.slice(0, -1), now, after: [past.now, ...past.after] };
}

export function redone<T>(past: Past<T>): Past<T> {
  const [now, ...after] = past.after;
  if (now === undefined) return past;
  return { before: [...past.before, past.now], now, after };
}
