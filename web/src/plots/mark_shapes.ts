// The small marks by which one edge's readings and runs are told from another's: filled or open,
// round or cornered, so that they differ in grey and in print too.

export interface MarkShape {
  /** An SVG path around 0,0, some five pixels across. */
  path: string;
  filled: boolean;
}

const round = "m-2.3,0a2.3,2.3 0 1,0 4.6,0a2.3,2.3 0 1,0 -4.6,0";
const square = "m-2.2,-2.2h4.4v4.4h-4.4z";
const diamond = "m0,-3.1l3.1,3.1l-3.1,3.1l-3.1,-3.1z";
const triangle = "m0,-2.8l2.9,5h-5.8z";

const shapes: MarkShape[] = [
  { path: round, filled: true },
  { path: round, filled: false },
  { path: diamond, filled: true },
  { path: square, filled: false },
  { path: triangle, filled: true },
  { path: diamond, filled: false },
  { path: square, filled: true },
  { path: triangle, filled: false },
];

/** The edge's own, the same through a whole report. */
export function markShape(index: number): MarkShape {
  return shapes[index % shapes.length] ?? { path: round, filled: true };
}

export interface MarkedPoint {
  /** In pixels. */
  x: number;
  y: number;
  /** What these points belong to: one path is drawn for each. */
  key: string;
}

/**
 * One path for each key: thousands of elements would be slow to draw and to open. Each carries its
 * key as data-run.
 */
export function shapesDrawn(points: MarkedPoint[], shape: MarkShape, className: string): Element {
  const svg = "http://www.w3.org/2000/svg";
  const group = document.createElementNS(svg, "g");
  group.setAttribute("class", `${className} ${shape.filled ? "filled" : "open"}`);
  const paths = new Map<string, string>();
  for (const { x, y, key } of points) {
    const here = `M${x.toFixed(1)},${y.toFixed(1)}${shape.path}`;
    paths.set(key, (paths.get(key) ?? "") + here);
  }
  for (const [key, d] of paths) {
    const path = document.createElementNS(svg, "path");
    path.setAttribute("d", d);
    path.setAttribute("data-run", key);
    group.append(path);
  }
  return group;
}
