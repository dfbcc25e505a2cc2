// How a run stands once what waits here has arrived: for the page, until the program says so itself.
// The program's rules (docs/wire/api.json, BenchStanding) as far as counting goes; what needs the
// readings' values (gate, burr, stop level) waits for it.

import type { BenchEntry, BenchRun } from "../wire/api";

export type Standing = BenchRun["standing"];

/** Ten times a tenth is one. */
const rounded = (cuts: number) => Math.round(cuts * 1e6) / 1e6;
const reached = (checkpoints: number[], cuts: number) =>
  Math.max(0, checkpoints.filter((at) => at <= cuts).length - 1);

/** Entries that are left when those that take back have taken back; and what else is taken back. */
function left(entries: BenchEntry[]): { left: BenchEntry[]; elsewhere: string[] } {
  const back = entries
    .filter(({ what }) => what === "taken back")
    .map(({ subject = "" }) => subject);
  const gone = new Set(back);
  return {
    left: entries.filter(({ what, id }) => what !== "taken back" && !gone.has(id)),
    elsewhere: back.filter((id) => !entries.some((entry) => entry.id === id)),
  };
}

function withoutKept(standing: Standing, ids: string[], sheet: BenchRun["sheet"]): Standing {
  const { to_take_back: last } = standing;
  if (!last || !ids.includes(last.id)) return standing;
  const next = { ...standing, to_take_back: undefined };
  if (last.what === "cuts") {
    next.cuts = rounded(standing.cuts - (last.cuts ?? 0));
    // Whoever cut on had read the checkpoint before as often as planned.
    const isBefore =
      reached(sheet.checkpoints, next.cuts) < reached(sheet.checkpoints, standing.cuts);
    if (isBefore) next.readings_here = sheet.repeats;
  }
  if (last.what === "reading") {
    next.readings_here = Math.max(0, next.readings_here - 1);
    next.readings_taken = Math.max(0, next.readings_taken - 1);
  }
  if (last.what === "paused") next.is_paused = false;
  if (last.what === "resumed") next.is_paused = true;
  if (last.what === "start") next.decided = undefined;
  if (last.what === "closed" || last.what === "voided") next.phase = "cutting";
  return next;
}

export function foreseen(
  { sheet, standing: kept }: Pick<BenchRun, "sheet" | "standing">,
  waiting: BenchEntry[],
): Standing {
  if (waiting.length === 0) return kept;
  const { left: entries, elsewhere } = left(waiting);
  const now: Standing = { ...withoutKept(kept, elsewhere, sheet) };
  let here = reached(sheet.checkpoints, now.cuts);
  let over = now.phase === "closed" || now.phase === "voided";
  for (const entry of entries) {
    if (over) break;
    now.to_take_back = { id: entry.id, words: "", what: entry.what, cuts: entry.cuts };
    if (entry.what === "cuts") now.cuts = rounded(now.cuts + (entry.cuts ?? 0));
    const at = reached(sheet.checkpoints, now.cuts);
    if (at !== here) {
      here = at;
      now.readings_here = 0;
      now.stop = undefined;
    }
    if (entry.what === "reading") now.readings_taken += 1;
    if (entry.what === "reading" && reached(sheet.checkpoints, entry.cuts ?? 0) === here)
      now.readings_here += 1;
    if (entry.what === "start") {
      const again = entry.subject === "sharpen again";
      // An edge that has cut is not of that start any more.
      if (again && now.cuts > 0) continue;
      now.decided = again ? undefined : (entry.subject as Standing["decided"]);
      if (again) {
        now.readings_here = 0;
        now.sharpenings += 1;
      }
    }
    if (entry.what === "paused") now.is_paused = true;
    if (entry.what === "resumed") now.is_paused = false;
    if (entry.what === "closed" || entry.what === "voided") {
      now.phase = entry.what;
      over = true;
    }
  }
  const { checkpoints, stations, repeats } = sheet;
  here = reached(checkpoints, now.cuts);
  now.next_checkpoint_cuts = checkpoints[here + 1];
  now.next_station =
    stations.length > 0 ? stations[now.readings_here % stations.length] : undefined;
  if (!over) now.phase = phaseOf(now, repeats, here === checkpoints.length - 1);
  return now;
}

function phaseOf(now: Standing, repeats: number, isLast: boolean): Standing["phase"] {
  if (!now.decided && now.cuts === 0) return "preparing";
  if (now.readings_here < repeats) return "reading";
  return now.stop || isLast ? "at_the_stop" : "cutting";
}
