// A trial that is planned and sealed: two blades in one medium, two runs of each.

import type { Asked, Cutting, Plan, Trial } from "../src/wire/api";
import { askApi, type ServedApp } from "./app_opened";

/** What else a plan says is in `more`. */
export function twoBlades(
  blades: [string, string],
  cutting: Cutting,
  more: Partial<Plan> = {},
): Asked {
  const edge = { bevel_angle_per_side_deg: 17.5 };
  return {
    claims: [{ words: `${blades[1]} outlasts ${blades[0]}`, worth_it_margin: 1.5 }],
    plan: {
      cuttings: [cutting],
      arms: blades.map((blade) => ({ blade, edge, cutting: 0 })),
      reading: { kind: "thread_push", repeats: 1 },
      stop: { level: 4 },
      runs_each: 2,
      order_seed: 7,
      runs: [
        { arm: 1, block: 1, order: 1 },
        { arm: 0, block: 1, order: 2 },
        { arm: 0, block: 2, order: 3 },
        { arm: 1, block: 2, order: 4 },
      ],
      ...more,
    },
  };
}

/** In a notebook that is made for it. Out: its uid. */
export async function sealedTrial(app: ServedApp, asked: Asked): Promise<string> {
  await askApi(app, "POST", "/notebooks", { how: "make", path: "bench" });
  const { uid } = await askApi<Trial>(app, "POST", "/trials", { name: "Sisal", asked });
  await askApi(app, "POST", `/trials/${uid}/seal`);
  return uid;
}
