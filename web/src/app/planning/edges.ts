// The edges of a plan: what they may vary in, and how that is found in a plan again. The program crosses
// them.

import type { EdgeChoices as AskedChoices, Edge } from "../../wire/api";

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

/** As the program is asked to cross them. */
export function choicesAsked({ bevels, apexes, finishes, thickness }: EdgeChoices): AskedChoices {
  return {
    bevel_angles_per_side_deg: bevels,
    apex_angles_per_side_deg: apexes,
    finishes: finishes.map((finish) => finish.trim()).filter((finish) => finish !== ""),
    thickness_behind_edge_mm: thickness,
  };
}

/** What stands there, each once; nothing where it is said of some edges only. */
function factor<T>(all: (T | undefined)[]): T[] | undefined {
  const each = [...new Set(all)];
  const said = each.filter((one): one is T => one !== undefined);
  return said.length === 0 || said.length === each.length ? said : undefined;
}

/** What different edges were crossed from; nothing where they are not every one of some choices. */
export function choicesIn(edges: Edge[]): EdgeChoices | undefined {
  const bevels = factor(edges.map((edge) => edge.bevel_angle_per_side_deg));
  const apexes = factor(edges.map((edge) => edge.apex_angle_per_side_deg));
  const finishes = factor(edges.map((edge) => edge.finish || undefined));
  const thicknesses = new Set(edges.map((edge) => edge.thickness_behind_edge_mm));
  if (!bevels || !apexes || !finishes || thicknesses.size > 1) return undefined;
  // None is there twice: as many as there can be are all there can be.
  const most = [bevels, apexes, finishes].reduce((n, { length }) => n * Math.max(1, length), 1);
  if (most !== edges.length) return undefined;
  return { bevels, apexes, finishes, thickness: [...thicknesses][0] };
}
