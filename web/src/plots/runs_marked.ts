// Marks that say which run they belong to, so that one run can be followed through all pictures.

import type * as Plot from "@observablehq/plot";

type Render = Plot.RenderFunction;

/**
 * A render option for marks whose data are `runKeys.length` long, or lines through them: each
 * element drawn carries data-run.
 */
export function carryingRuns(runKeys: readonly (string | undefined)[]): { render: Render } {
  return {
    render: (index, scales, values, dimensions, context, next) => {
      const drawn = next?.(index, scales, values, dimensions, context) ?? null;
      for (const element of drawn?.querySelectorAll("path,circle,line,text,rect") ?? []) {
        const bound = (element as unknown as { __data__?: number | number[] }).__data__;
        const first = Array.isArray(bound) ? bound[0] : bound;
        const key = first === undefined ? undefined : runKeys[first];
        if (key !== undefined) element.setAttribute("data-run", key);
      }
      return drawn;
    },
  };
}
