// What stands beside the pictures of a judgement, put together from the report's own words.

import { readingsOf } from "../plots/curve_marks";
import type { Judgement, MediumView } from "../plots/view";

const mostInOneFrame = 6;
const mostBands = 4;

/** As the report draws them: more lines cannot be told apart, more bands hide each other. */
export function curveForm(medium: MediumView): "banded" | "plain" | "each" {
  const curves = medium.arms.filter(({ arm }) => arm.curve.length > 0).length;
  if (curves > mostInOneFrame) return "each";
  return curves <= mostBands ? "banded" : "plain";
}

/** What stands in the picture beside the curves, as the report explains it. */
function curveMarks(medium: MediumView): string {
  const shown = medium.arms.filter(({ arm }) => arm.curve.length > 0);
  const runs = shown.flatMap((arm) => arm.runs);
  const rings = shown.some(
    ({ lasting }) => lasting?.reading !== undefined && !lasting.beyond_what_was_cut,
  );
  const struck = runs.some((run) =>
    readingsOf(run).some((reading) => reading.struck !== undefined),
  );
  const events = runs.some(({ recorded }) => recorded.events.length > 0);
  const beyond = shown.some(({ arm }) => arm.curve.some((point) => point.beyond_what_was_cut));
  return [
    rings && ` Rings: ${medium.lastingWords}.`,
    struck && " Crosses: struck out.",
    events && " Triangles: something happened.",
    beyond && " Shaded: beyond what was cut.",
  ]
    .filter(Boolean)
    .join("");
}

export function curveCaption({ kind, counted }: Judgement, medium: MediumView): string {
  const read = kind.words ?? kind.name;
  const keener = kind.keener_when === "lower" ? "lower" : "higher";
  const keys = medium.arms
    .filter(({ label, name }) => label !== name)
    .map(({ keyedName }) => keyedName);
  const key = keys.length > 0 ? `\n${keys.join("\n")}` : "";
  return (
    `${read.charAt(0).toUpperCase()}${read.slice(1)} (${kind.unit}) over the ` +
    `${counted}; ${keener} is keener. Thin: each run. Bold: each edge.${curveMarks(medium)}${key}`
  );
}

export function ratioCaption({ worth_it_margin }: Judgement): string {
  return (
    "How many times as long, with its 95 % interval: thick for the pair by itself, thin for all " +
    `pairs at once. Shaded: inside the worth-it margin ${worth_it_margin}.`
  );
}

/** "A starts at 104 gf and lasts 34 cuts (3.4 m)" */
export function lastingWords(medium: MediumView): string[] {
  return medium.arms.map(({ name, startWords, lasting }) => {
    const starts = startWords ? ` starts at ${startWords}` : "";
    const lasts = lasting ? ` lasts ${lasting.words}` : " was not seen to blunt so far";
    return `${name}${starts}${starts ? " and" : ""}${lasts}`;
  });
}
