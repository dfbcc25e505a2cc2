// Where the edges of an answer are compared, as it can be asked otherwise.

import type { Judged } from "../wire/api";

export interface ComparedAt {
  /** Times the start reading. */
  level?: number;
  /** One reading for all edges, with its unit: "400gf". */
  reading?: string;
}

/** Neither where edges were only tested: how long they last is not read off a curve. */
export function comparedAt({ report }: Pick<Judged, "report">): ComparedAt {
  const where = report.judgements[0]?.media[0]?.at;
  switch (where?.what) {
    case "half_keenness":
    case "level":
      return { level: where.level };
    case "common_reading":
      return { reading: `${Number(where.reading.toPrecision(4))}${where.unit}` };
    default:
      return {};
  }
}
