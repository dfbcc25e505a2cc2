// What is asked and planned while it is written: blades, edges and media by themselves, from which the
// program makes the arms.

import type { ArmChoices, Asked, Claim, Cutting, Edge, Plan, Trial } from "../../wire/api";
import { choicesAsked, choicesIn, type EdgeChoices, sameEdge, unsaid } from "./edges";

/** How edges come to blades: every angle with every finish on every blade; each of a list on every
    blade; or each blade with its own. */
export type Sharing = "crossed" | "listed" | "own";

export interface Draft {
  blades: string[];
  sharing: Sharing;
  /** Where they are crossed. */
  choices: EdgeChoices;
  /** Where they are listed; or one for each blade, in order. */
  edges: Edge[];
  cuttings: Cutting[];
  claims: Claim[];
  /** All of the plan but its arms and cuttings. */
  rest: Omit<Plan, "arms" | "cuttings">;
}

/** Another order for each plan, and the same again from the same number. */
export const anySeed = (): number => 1 + Math.floor(Math.random() * 999_999);

export function emptyDraft(): Draft {
  return {
    blades: ["", ""],
    sharing: "crossed",
    choices: { bevels: [], apexes: [], finishes: [] },
    edges: [{}],
    cuttings: [{ medium: "", method: { motion: "slice" }, checkpoint_cuts: [] }],
    claims: [{ words: "", worth_it_margin: 1.5 }],
    rest: {
      reading: { kind: "thread_push", repeats: 7 },
      stop: { level: 4 },
      runs_each: 6,
      order_seed: anySeed(),
      runs: [],
    },
  };
}

function edgesOf(plan: Plan): Edge[] {
  const edges: Edge[] = [];
  for (const arm of plan.arms) {
    const edge = unsaid(arm.edge);
    if (!edges.some((known) => sameEdge(known, edge))) edges.push(edge);
  }
  return edges;
}

type DraftedEdges = Pick<Draft, "sharing" | "choices" | "edges">;

function draftedEdges(plan: Plan, blades: string[]): DraftedEdges {
  const edges = edgesOf(plan);
  const { choices } = emptyDraft();
  const pairs = new Set(plan.arms.map(({ blade, edge }) => JSON.stringify([blade, unsaid(edge)])));
  if (pairs.size !== blades.length * edges.length) {
    const own = (blade: string) => plan.arms.find((arm) => arm.blade === blade)?.edge ?? {};
    return { sharing: "own", choices, edges: blades.map((blade) => unsaid(own(blade))) };
  }
  const crossed = choicesIn(edges);
  return crossed
    ? { sharing: "crossed", choices: crossed, edges }
    : { sharing: "listed", choices, edges };
}

/** Of a trial that was cut: its blades and media, what it counts and what was read most often. Edges and
    ways of cutting are left unsaid, which fits whatever they were. */
function recordedIn({ counted, series, runs }: Trial["recorded"]): Partial<Draft> {
  const readings = series.map(() => 0);
  for (const { series: of } of runs.flatMap((run) => run.readings)) {
    readings[of] = (readings[of] ?? 0) + 1;
  }
  const read = series[readings.indexOf(Math.max(...readings))];
  if (!read) return {};
  const { rest } = emptyDraft();
  return {
    blades: [...new Set(runs.map(({ blade }) => blade))],
    cuttings: [...new Set(runs.map(({ medium }) => medium))].map((medium) => ({
      medium,
      checkpoint_cuts: [],
    })),
    rest: {
      ...rest,
      counted: counted === "cuts" ? undefined : counted,
      reading: { ...rest.reading, kind: read.kind },
    },
  };
}

/** What was asked and planned; where nothing is planned yet, of what was recorded already. */
export function draftOf(asked: Asked | undefined, recorded?: Trial["recorded"]): Draft {
  const planned = (asked?.plan?.arms.length ?? 0) > 0;
  const draft = { ...emptyDraft(), ...(recorded && !planned ? recordedIn(recorded) : {}) };
  if (!asked) return draft;
  const claims = asked.claims.length > 0 ? asked.claims : draft.claims;
  if (!asked.plan) return { ...draft, claims };
  const { arms, cuttings, ...rest } = asked.plan;
  const blades = [...new Set(arms.map(({ blade }) => blade))];
  const drafted = blades.length > 0 ? { blades, ...draftedEdges(asked.plan, blades) } : {};
  return {
    ...draft,
    ...drafted,
    cuttings: cuttings.length > 0 ? cuttings : draft.cuttings,
    claims,
    rest,
  };
}

const named = (names: string[]) => names.map((name) => name.trim()).filter((name) => name !== "");
export const bladesNamed = ({ blades }: Draft): string[] => named(blades);
export const cuttingsNamed = ({ cuttings }: Draft): Cutting[] =>
  cuttings
    .map((cutting) => ({ ...cutting, medium: cutting.medium.trim() }))
    .filter(({ medium }) => medium !== "");
export const claimsSaid = ({ claims }: Draft): Claim[] =>
  claims.filter(({ words }) => words.trim() !== "");

/** What is to be said before a question can be written down; nothing where blades and media are named, or a
    claim stands by itself. */
export function askedLacks(draft: Draft): string | undefined {
  const [blades, media] = [bladesNamed(draft).length > 0, cuttingsNamed(draft).length > 0];
  if (blades && media) return undefined;
  if (blades) return "What do they cut? Name a medium; the blades are kept with it.";
  if (media) return "Which blades cut it? Name one at least; the medium is kept with it.";
  if (claimsSaid(draft).length > 0) return undefined;
  return "Nothing is asked yet. Name the blades and what they cut.";
}

export function armChoices(draft: Draft, cuttings: number): ArmChoices {
  const edges = {
    crossed: () => ({ edge_choices: choicesAsked(draft.choices) }),
    listed: () => ({ edges: draft.edges }),
    own: () => ({ edges: bladesNamed(draft).map((_, place) => draft.edges[place] ?? {}) }),
  }[draft.sharing]();
  return { blades: bladesNamed(draft), ...edges, cuttings, crossed: draft.sharing !== "own" };
}

/** Blades of a draft by other names; where each has its own edge, that of one left out goes with it. */
export function bladesCalled(draft: Draft, names: string[]): Pick<Draft, "blades" | "edges"> {
  const left = draft.blades.findIndex((blade, at) => blade !== names[at]);
  const shorter = draft.sharing === "own" && names.length < draft.blades.length;
  const edges = shorter ? draft.edges.filter((_, at) => at !== left) : draft.edges;
  return { blades: names, edges };
}

/** Media of a draft by other names; each keeps what else is known of its cutting, also where one
    before it is left out. */
export function cuttingsCalled({ cuttings }: Draft, names: string[]): Cutting[] {
  const before = (medium: string, at: number) =>
    names.length === cuttings.length
      ? cuttings[at]
      : cuttings.find((cutting) => cutting.medium === medium);
  return names.map((medium, at) => ({
    method: cuttings[0]?.method,
    checkpoint_cuts: [],
    ...before(medium, at),
    medium,
  }));
}

const cutting: Record<string, string> = {
  slice: "Slicing",
  push: "Push-cutting",
  draw: "Draw-cutting",
};

/** A claim to begin with, where blades and a medium are named; the person's own words go before it. */
export function suggestedClaim(draft: Draft, margin: number): string {
  const [first, second] = bladesNamed(draft);
  const [where] = cuttingsNamed(draft);
  if (!first || !second || !where) return "";
  const doing = cutting[where.method?.motion ?? ""] ?? "Cutting";
  return `${doing} ${where.medium}, ${first} stays keen at least ${margin} times as long as ${second}.`;
}

/** What is said of each medium, of those that are named: as the plan has them. Nothing where it is said
    of none. */
export function ofNamed<T>({ cuttings }: Draft, said: (T | null)[] = []): (T | null)[] | undefined {
  const of = cuttings.flatMap(({ medium }, place) =>
    medium.trim() === "" ? [] : [said[place] ?? null],
  );
  return of.some((one) => one !== null) ? of : undefined;
}

/** The list with another one in that place. */
export function withPlace<T>(list: (T | null)[] = [], place: number, one: T | undefined) {
  const longer = [...list, ...Array<null>(Math.max(0, place + 1 - list.length)).fill(null)];
  return longer.map((before, at) => (at === place ? (one ?? null) : before));
}

/** "0, 1, 3" as numbers; nothing where it is not a list of numbers, or where "17,5" may as well be
    one number with a decimal comma. */
export function numbersIn(text: string): number[] | undefined {
  const parts = text.split(/[\s;]+|,\s+|,$/).filter((part) => part !== "");
  if (parts.some((part) => /^[^,]+,[^,]+$/.test(part))) return undefined;
  const numbers = parts.flatMap((part) => part.split(",").filter((one) => one !== "")).map(Number);
  return numbers.every((number) => Number.isFinite(number)) ? numbers : undefined;
}

const so = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

/** "2 blades × 2 angles × 1 medium: 4 arms": what is crossed, and how many arms come of it. */
export function crossingWords(draft: Draft, arms: number): string {
  const { bevels, apexes, finishes } = draft.choices;
  const said = named(finishes).length;
  const blades = so(bladesNamed(draft).length, "blade");
  const factors = {
    crossed: [
      blades,
      bevels.length > 0 ? so(bevels.length, "angle") : "",
      apexes.length > 0 ? so(apexes.length, "micro-bevel") : "",
      said > 0 ? so(said, "finish", "finishes") : "",
    ],
    listed: [blades, so(draft.edges.length, "edge")],
    own: [`${blades}, each with its own edge`],
  }[draft.sharing].filter((words) => words !== "");
  const media = so(cuttingsNamed(draft).length, "medium", "media");
  return `${[...factors, media].join(" × ")}: ${so(arms, "arm")}.`;
}
