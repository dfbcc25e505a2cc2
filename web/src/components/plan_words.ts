// The arms of a plan in words, and how its media are cut; lengths and readings in what is chosen to be shown.

import { type Shown, shownWords } from "../app/shown_unit";
import type { Cutting, Plan, ReadingKind } from "../wire/api";

const motions = { push: "push cut", draw: "draw cut", slice: "slice" } as const;

/** "slice, 25 mm parted by a cut, on a soft board". */
export function methodInWords({ method = {} }: Cutting, shown: Shown): string {
  const length = (mm: number) => shownWords(mm, shown("mm"));
  const said = [
    method.motion ? motions[method.motion] : method.as_written,
    method.cut_length_mm ? `${length(method.cut_length_mm)} parted by one cut` : "",
    method.edge_used_mm ? `on ${length(method.edge_used_mm)} of the edge` : "",
    method.board ? `before ${method.board}` : "",
  ];
  return said.filter(Boolean).join(", ");
}

/** "A in sisal rope": each as shortly as it can be told from the others. */
export function armInWords(plan: Plan, place: number): string {
  const arm = plan.arms[place];
  if (!arm) return "";
  const words = arm.words ?? arm.blade;
  const medium = plan.cuttings[arm.cutting]?.medium;
  return plan.cuttings.length > 1 && medium ? `${words} in ${medium}` : words;
}

/** Of all arms, where it is one. */
export function edgeOfAll({ arms }: Plan): string {
  const edges = new Set(arms.map(({ edge }) => edge.words ?? ""));
  const [words] = edges;
  return edges.size === 1 && words ? `each edge ${words}` : "";
}

export const armsInWords = (plan: Plan): string[] =>
  plan.arms.map((_, place) => armInWords(plan, place));

/** Each once, in order. */
export const bladesOf = ({ arms }: Plan): string[] => [...new Set(arms.map(({ blade }) => blade))];

const unitOfReadings = ({ reading }: Plan, kind: ReadingKind | undefined, shown: Shown) =>
  shown(reading.unit ?? kind?.unit);

/** "thread push reading in gf, 7 at each checkpoint"; the start gate. */
export function readingInWords(plan: Plan, kind: ReadingKind | undefined, shown: Shown): string[] {
  const { reading, start_gate } = plan;
  const inUnit = unitOfReadings(plan, kind, shown);
  const words = kind?.words ?? reading.kind.replaceAll("_", " ");
  const thread = [reading.thread, reading.thread_lot && `lot ${reading.thread_lot}`];
  const gate = start_gate;
  return [
    `${words}${inUnit.unit ? ` in ${inUnit.unit}` : ""}, ${reading.repeats} at each checkpoint`,
    thread.filter(Boolean).join(", "),
    reading.stations?.length ? `at ${reading.stations.join(", ")}` : "",
    gate
      ? `every edge starts at ${shownWords(gate.target_reading, inUnit)}, give or take ${Math.round(1000 * gate.tolerance_fraction) / 10} %; one that does not is sharpened again`
      : "",
  ];
}

export function stopInWords(plan: Plan, kind: ReadingKind | undefined, shown: Shown): string[] {
  const { stop } = plan;
  return [
    stop.level ? `at ${stop.level} times its start reading` : "",
    stop.reading ? `at ${shownWords(stop.reading, unitOfReadings(plan, kind, shown))}` : "",
    stop.force_cap_newton
      ? `and never harder than ${shownWords(stop.force_cap_newton, shown("N"))}`
      : "",
    "at its last checkpoint at the latest",
  ];
}
