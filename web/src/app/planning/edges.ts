// The edges of a plan: what they may vary in, every edge that comes of it, and the way back.

import type { Edge } from "../../wire/api";

/** Every bevel with every micro-bevel with every finish; an empty list leaves that unsaid. */
export interface EdgeChoices {
  bevels: number[];
  apexes: number[];
  finishes: string[];
  thickness?: number;
}

/** Edges that say the same are the same, whatever words are told with them. */
export const sameEdge = (a: Edge, b: Edge): boolean =>
  a.bevel_angle_per_side_deg === b.bevel_angle_per_side_deg &&
  a.apex_angle_per_side_deg === b.apex_angle_per_side_deg &&
  (a.finish ?? "") === (b.finish ?? "") &&
  a.thickness_behind_edge_mm === b.thickness_behind_edge_mm;

export const unsaid = ({ words: _, ...edge }: Edge): Edge => edge;

const orUnsaid = <T>(choices: T[]): (T | undefined)[] =>
  choices.length > 0 ? choices : [undefined];

export function crossedEdges({ bevels, apexes, finishes, thickness }: EdgeChoices): Edge[] {
  const said = finishes.map((finish) => finish.trim()).filter((finish) => finish !== "");
  return orUnsaid(bevels).flatMap((bevel) =>
    orUnsaid(apexes).flatMap((apex) =>
      orUnsaid(said).map((finish) => ({
        bevel_angle_per_side_deg: bevel,
        apex_angle_per_side_deg: apex,
        finish,
        thickness_behind_edge_mm: thickness,
      })),
    ),
  );
}

const distinct = <T>(all: (T | undefined)[]): T[] =>
  [...new Set(all)].filter((one): one is T => one !== undefined);

/** What the edges were crossed from; nothing where they are not every one of some choices. */
export function choicesIn(edges: Edge[]): EdgeChoices | undefined {
  const thicknesses = new Set(edges.map((edge) => edge.thickness_behind_edge_mm));
  const choices: EdgeChoices = {
    bevels: distinct(edges.map((edge) => edge.bevel_angle_per_side_deg)),
    apexes: distinct(edges.map((edge) => edge.apex_angle_per_side_deg)),
    finishes: distinct(edges.map((edge) => edge.finish || undefined)),
    thickness: [...thicknesses][0],
  };
  const crossed = crossedEdges(choices);
  const all = crossed.length === edges.length && thicknesses.size <= 1;
  const each = crossed.every((edge) => edges.some((known) => sameEdge(known, edge)));
  return all && each ? choices : undefined;
}
