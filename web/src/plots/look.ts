// What all pictures share: colours by name (the style sheet gives them for light, dark and paper),
// the line patterns that tell blades apart, and the sizes of type.

export const ink = "var(--ink)";
export const graphite = "var(--graphite)";
export const rule = "var(--rule)";
export const faint = "var(--faint)";
export const sheet = "var(--sheet)";
export const signal = "var(--signal)";
export const answer = "var(--answer)";

/** Dashes for SVG strokes; a blade keeps its own through a whole report. */
const patterns = ["", "10 5", "2 5", "14 4 2 4", "6 3", "2 3 7 3", "18 5", "1 3"];

export function pattern(index: number): string {
  return patterns[index % patterns.length] ?? "";
}

/**
 * Of axes without a line: their ticks are lines across, or need none. Axes say their ticks by
 * `text`, since by `tickFormat` the library leaves some on a logarithmic axis without words.
 */
export const bare = { labelArrow: "none" as const, tickSize: 0, color: graphite };

export const fontSize = 13;
export const style = { fontSize: `${fontSize}px`, overflow: "visible", background: "none" };
