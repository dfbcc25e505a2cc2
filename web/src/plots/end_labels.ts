// Labels at the ends of lines, moved apart where lines end close to each other.

import { graphite, ink } from "./look";
import { type MarkShape, shapesDrawn } from "./mark_shapes";

export interface EndLabel {
  text: string;
  y: number;
}

/** `labels` with y in pixels, each moved as little as puts `gap` between neighbours. */
export function movedApart<Label extends EndLabel>(labels: Label[], gap: number): Label[] {
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  // Neighbours that are too close become one group around their mean; groups may then meet.
  const groups: { labels: Label[]; middle: number }[] = [];
  for (const label of sorted) {
    let group = { labels: [label], middle: label.y };
    for (let before = groups.at(-1); before; before = groups.at(-1)) {
      const room = (gap * (before.labels.length + group.labels.length)) / 2;
      if (group.middle - before.middle >= room) break;
      groups.pop();
      const together = [...before.labels, ...group.labels];
      const middle = together.reduce((sum, { y }) => sum + y, 0) / together.length;
      group = { labels: together, middle };
    }
    groups.push(group);
  }
  return groups.flatMap(({ labels: together, middle }) =>
    together.map((label, place) => ({
      ...label,
      y: middle + gap * (place - (together.length - 1) / 2),
    })),
  );
}

/** A line's end in pixels, with what names it. */
export interface LineEnd {
  text: string;
  endX: number;
  endY: number;
  /** The mark of the line's edge, drawn before its name. */
  shape?: MarkShape;
}

const lineHeight = 15;
const leader = 12;
const markRoom = 11;

/** So much room the names of lines need beside the frame, in pixels. */
export function labelRoom(ends: Pick<LineEnd, "text" | "shape">[]): number {
  const longest = Math.max(0, ...ends.map(({ text }) => [...text].length));
  const mark = ends.some(({ shape }) => shape) ? markRoom : 0;
  return leader + mark + 6 + Math.ceil(longest * 8);
}

function drawnIn(parent: Element, tag: string, attributes: Record<string, string | number>) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, content] of Object.entries(attributes)) {
    element.setAttribute(name, String(content));
  }
  parent.append(element);
  return element;
}

/** Names in a column at `right`, each led to by a thin line from its line's end. */
export function endLabels(ends: LineEnd[], right: number): SVGElement {
  const group = document.createElementNS("http://www.w3.org/2000/svg", "g");
  group.setAttribute("class", "end-labels");
  const moved = movedApart(
    ends.map((end) => ({ ...end, y: end.endY })),
    lineHeight,
  );
  for (const { text, shape, endX, endY, y } of moved) {
    const d = `M${endX},${endY}L${Math.max(endX, right)},${endY}L${right + leader - 2},${y}`;
    drawnIn(group, "path", { d, fill: "none", stroke: graphite, "stroke-width": 0.7 });
    const start = right + leader + 3;
    if (shape) {
      const mark = shapesDrawn([{ x: start + 2, y, key: "" }], shape, "key-mark");
      mark.firstElementChild?.removeAttribute("data-run");
      group.append(mark);
    }
    const x = start + (shape ? markRoom : 0);
    const name = { x, y, dy: "0.32em", fill: ink, "font-weight": 700, "text-anchor": "start" };
    drawnIn(group, "text", name).textContent = text;
  }
  return group;
}
