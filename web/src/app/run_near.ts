// Which run of a picture a finger or a pointer means: the one it is on, else the nearest about it.

const reach = [0, 6, 12, 18, 24, 32];
const directions = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  [0.7, 0.7],
  [-0.7, 0.7],
  [-0.7, -0.7],
  [0.7, -0.7],
] as const;

function keyAt(page: Document, x: number, y: number): string | undefined {
  const here = page.elementFromPoint(x, y)?.closest("[data-run]");
  return here?.getAttribute("data-run") ?? undefined;
}

/** The key of the run, "0:12"; `x` and `y` are in pixels of the window. */
export function runNear(page: Document, x: number, y: number): string | undefined {
  for (const far of reach) {
    for (const [right, down] of directions) {
      const key = keyAt(page, x + far * right, y + far * down);
      if (key !== undefined) return key;
    }
  }
  return undefined;
}
