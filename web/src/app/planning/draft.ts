// What is asked and planned while it is written: blades, edges and media by themselves, from which the
// program makes the arms.

import type { Asked, Claim, Cutting, Edge, Plan } from "../../wire/api";

export interface Draft {
  blades: string[];
  edges: Edge[];
  /** Every edge with every blade; else one edge for each blade, in order. */
  crossed: boolean;
  cuttings: Cutting[];
  claims: Claim[];
  /** All of the plan but its arms and cuttings. */
  rest: Omit<Plan, "arms" | "cuttings">;
}

const sameEdge = (a: Edge, b: Edge) => JSON.stringify(a) === JSON.stringify(b);
const unsaid = ({ words: _, ...edge }: Edge): Edge => edge;

function edgesOf(plan: Plan): Edge[] {
  const edges: Edge[] = [];
  for (const arm of plan.arms) {
    const edge = unsaid(arm.edge);
    if (!edges.some((known) => sameEdge(known, edge))) edges.push(edge);
  }
  return edges;
}

export function emptyDraft(): Draft {
  return {
    blades: ["", ""],
    edges: [{}],
    crossed: true,
    cuttings: [{ medium: "", method: { motion: "slice" }, checkpoint_cuts: [] }],
    claims: [{ words: "", worth_it_margin: 1.5 }],
    rest: {
      reading: { kind: "thread_push", repeats: 7 },
      stop: { level: 4 },
      runs_each: 6,
      order_seed: 1,
      runs: [],
    },
  };
}

export function draftOf(asked: Asked | undefined): Draft {
  const draft = emptyDraft();
  if (!asked) return draft;
  const claims = asked.claims.length > 0 ? asked.claims : draft.claims;
  if (!asked.plan) return { ...draft, claims };
  const { arms, cuttings, ...rest } = asked.plan;
  const blades = [...new Set(arms.map(({ blade }) => blade))];
  const edges = edgesOf(asked.plan);
  const pairs = new Set(arms.map(({ blade, edge }) => JSON.stringify([blade, unsaid(edge)])));
  return {
    blades: blades.length > 0 ? blades : draft.blades,
    edges: edges.length > 0 ? edges : draft.edges,
    crossed: pairs.size === blades.length * edges.length,
    cuttings: cuttings.length > 0 ? cuttings : draft.cuttings,
    claims,
    rest,
  };
}

const named = (names: string[]) => names.map((name) => name.trim()).filter((name) => name !== "");
export const bladesNamed = ({ blades }: Draft): string[] => named(blades);
export const cuttingsNamed = ({ cuttings }: Draft): Cutting[] =>
  cuttings.filter(({ medium }) => medium.trim() !== "");
export const claimsSaid = ({ claims }: Draft): Claim[] =>
  claims.filter(({ words }) => words.trim() !== "");

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
  return `${doing} ${where.medium.trim()}, ${first} stays keen at least ${margin} times as long as ${second}.`;
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

/** An arm as the order of cutting names it: with its medium where there are several. */
export function armWords({ arms, cuttings }: Plan, at: number): string {
  const arm = arms[at];
  if (!arm) return "";
  const medium = cuttings.length > 1 ? cuttings[arm.cutting]?.medium : undefined;
  return `${arm.words ?? arm.blade}${medium ? ` in ${medium}` : ""}`;
}

/** "0, 1, 3" as numbers; nothing where it is not a list of numbers. */
export function numbersIn(text: string): number[] | undefined {
  const numbers = text
    .split(/[\s,;]+/)
    .filter((part) => part !== "")
    .map(Number);
  return numbers.every((number) => Number.isFinite(number)) ? numbers : undefined;
}
