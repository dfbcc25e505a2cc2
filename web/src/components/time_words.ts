// When something happened, as a person says it: "today at 14:05", "3 May 2026 at 14:05".

const day: Intl.DateTimeFormatOptions = { day: "numeric", month: "long", year: "numeric" };
const clock: Intl.DateTimeFormatOptions = { hour: "2-digit", minute: "2-digit", hourCycle: "h23" };

/** `utc`: as the program writes times, "2026-05-03T14:05:11Z"; shown by this machine's clock. */
export function inWords(utc: string, now = new Date()): string {
  const at = new Date(utc);
  if (Number.isNaN(at.getTime())) return utc;
  if (at.toDateString() !== now.toDateString()) return onDay(utc);
  return `today at ${new Intl.DateTimeFormat("en-GB", clock).format(at)}`;
}

/** "28 November 2026 at 14:05", also where that is today. */
export function onDay(utc: string): string {
  const at = new Date(utc);
  if (Number.isNaN(at.getTime())) return utc;
  const time = new Intl.DateTimeFormat("en-GB", clock).format(at);
  return `${new Intl.DateTimeFormat("en-GB", day).format(at)} at ${time}`;
}

/** Of a plan; `uncut`: nothing was cut to it yet. */
export const sealedWords = (utc: string, uncut: boolean): string =>
  `Sealed on ${onDay(utc)}${uncut ? "; cut next" : ""}.`;

/** "about 40 seconds", "about 3 minutes" */
export function timeLeft(seconds: number): string {
  if (seconds < 1.5) return "a moment";
  if (seconds < 55) return `about ${Math.ceil(seconds)} seconds`;
  const minutes = Math.ceil(seconds / 60);
  return minutes === 1 ? "about a minute" : `about ${minutes} minutes`;
}
