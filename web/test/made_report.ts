// A report made up for tests: so many edges in so many media, so many runs of each, with the exact
// curve for readings.

import { at } from "../src/plots/view";
import type { Report } from "../src/wire/report";

type Judged = Report["judgements"][number];
type Arm = Judged["judgement"]["arms"][number];

export interface Made {
  blades?: string[];
  media?: string[];
  runsEach?: number;
  /** Cuts at which readings are taken. */
  checkpoints?: number[];
  /** Cuts to half keenness of the first edge; each further edge lasts half as long again. */
  halfKeenness?: number;
}

const round = (number: number) => Number(number.toPrecision(6));

function around(median: number, logWidth = 0.2) {
  const times = (factor: number) => round(median * Math.exp(logWidth * factor));
  return {
    median: round(median),
    lo90: times(-0.8),
    hi90: times(0.8),
    lo95: times(-1),
    hi95: times(1),
  };
}

const start = 100;
const shape = 0.7;
const readingAt = (cuts: number, half: number) => round(start * (1 + (cuts / half) ** shape));

function madeArm(blade: string, medium: string, half: number, runs: number, last: number): Arm {
  const points = [0, ...Array.from({ length: 12 }, (_, place) => round(1.5 ** (place + 1) - 0.5))];
  return {
    blade,
    edge: { words: "17° per side", bevel_angle_per_side_deg: 17 },
    medium,
    method: { words: "slice", motion: "slice" },
    runs,
    specimens: 1,
    longest_run_cuts: last,
    start_reading: around(start, 0.05),
    half_keenness_cuts: {
      ...around(half),
      beyond_what_was_cut: half > last,
      runs_that_reached: half > last ? 0 : runs,
    },
    run_scatter_log_sd: around(0.2),
    shape: around(shape, 0.05),
    runs_that_never_blunt: 0,
    curve: points.map((cuts) => ({
      cuts,
      ...around(readingAt(cuts, half), 0.08),
      beyond_what_was_cut: cuts > last,
    })),
  };
}

const identityOf = ({ blade, edge, medium, method }: Arm) => ({ blade, edge, medium, method });

export function madeReport(made: Made = {}): Report {
  const { blades = ["A", "B"], media = ["new matting"], runsEach = 3 } = made;
  const { checkpoints = [0, 1, 3, 7, 15, 31, 63], halfKeenness = 20 } = made;
  const last = Math.max(...checkpoints);
  const judged: Pick<Judged["judgement"], "arms" | "runs" | "comparisons"> = {
    arms: [],
    runs: [],
    comparisons: [],
  };
  const report: Pick<Judged, "names" | "comparisons" | "media" | "runs"> = {
    names: [],
    comparisons: [],
    media: [],
    runs: [],
  };
  const trialRuns: Report["trial"]["runs"] = [];
  const halves: number[] = [];
  for (const medium of media) {
    const pairs: number[] = [];
    const armsHere: number[] = [];
    const group = {
      words: medium,
      at: { what: "half_keenness", level: 2 } as const,
      lasting_words: "cuts to half keenness",
    };
    blades.forEach((blade, place) => {
      const half = halfKeenness * 1.5 ** place;
      const arm = judged.arms.length;
      halves.push(half);
      armsHere.push(arm);
      judged.arms.push(madeArm(blade, medium, half, runsEach, last));
      report.names.push({
        name: blade,
        label: blade,
        start_words: `${start} gf`,
        curve: at(judged.arms, arm).curve.map(({ cuts, median }) => ({
          cuts_words: `${cuts} cuts`,
          reading_words: `${median} gf`,
        })),
        lasting: {
          ...around(half),
          reading: 2 * start,
          beyond_what_was_cut: half > last,
          runs_that_reached: runsEach,
          words: `${Math.round(half)} cuts`,
        },
      });
      for (let run = 0; run < runsEach; run++) {
        const own = half * Math.exp(0.1 * (run - (runsEach - 1) / 2));
        judged.runs.push({
          arm,
          name: String(run + 1),
          block: String(run + 1),
          order: judged.runs.length + 1,
          checkpoints: checkpoints.length,
          readings_used: checkpoints.length,
          readings_struck: 0,
          readings_doubtful: 0,
          last_cuts: last,
          start_reading: around(start, 0.05),
          half_keenness_cuts: around(own),
          stopped_before_half_keenness: own > last,
          compared_cuts: around(own),
          stopped_before_compared: own > last,
          remarks: [],
        });
        const readings = checkpoints.map((cuts) => ({
          series: 0,
          cuts,
          reading: readingAt(cuts, own),
        }));
        report.runs.push({
          run: trialRuns.length,
          series: [0],
          checkpoints: readings.map(({ cuts, reading }) => ({ cuts, reading, readings: 1 })),
          lasting:
            own > last
              ? { known: "at_least", cuts: last, words: `at least ${last}` }
              : { known: "exactly", cuts: round(own), words: `${Math.round(own)}` },
          place: judged.runs.length,
          half_keenness_over_arm: round(own / half),
        });
        trialRuns.push({
          name: String(run + 1),
          blade,
          medium,
          readings,
          edge_lives: [],
          events: [],
          deviations: [],
          notes: [],
        });
      }
    });
    for (let b = 0; b < blades.length; b++) {
      for (let a = b + 1; a < blades.length; a++) {
        const [longer, shorter] = [at(armsHere, a), at(armsHere, b)];
        const ratio = (halves[longer] ?? 1) / (halves[shorter] ?? 1);
        const settled = ratio > 2;
        pairs.push(judged.comparisons.length);
        report.comparisons.push({
          a: longer,
          b: shorter,
          ratio_words: ratio.toPrecision(2),
          interval_words: `${(ratio * 0.7).toPrecision(2)} to ${(ratio * 1.4).toPrecision(2)}`,
          settled,
          level_words: ["1.25", "2", "4"],
          levels_compared: [2, 2],
        });
        const { median: _, ...simultaneous } = around(ratio, 0.35);
        judged.comparisons.push({
          a: identityOf(at(judged.arms, longer)),
          b: identityOf(at(judged.arms, shorter)),
          at: { what: "half_keenness", level: 2 },
          ratio: around(ratio, 0.25),
          simultaneous: { ...simultaneous, comparisons: 3 },
          ratio_by_level: [1.25, 2, 4].map((level) => ({
            level,
            ...around(ratio * level ** 0.1, 0.25),
            beyond_what_was_cut: level > 3,
          })),
          probability_longer: 0.9,
          probability_worth_having: 0.6,
          verdict: settled ? "longer, and worth having" : "not settled",
          single_verdict: settled ? "longer, and worth having" : "not settled",
          near_boundary: false,
          beyond_what_was_cut: false,
          claim_about: "these blades",
          also_differs: [],
          remarks: [],
        });
      }
    }
    const [firstArm, ...otherArms] = armsHere;
    if (firstArm === undefined) throw new Error("made with no edge");
    report.media.push({ ...group, arms: [firstArm, ...otherArms], comparisons: pairs });
  }
  const judgement: Judged["judgement"] = {
    ...judged,
    trial: "A trial made up",
    counted: "cuts",
    kind: { name: "thread_push", words: "thread push reading", unit: "gf", keener_when: "lower" },
    worth_it_margin: 1.5,
    stop_level: 4,
    covariates: [],
    curve_check: { passed: true, smallest_p: 0.5, where: [] },
    fit: {
      usable: true,
      reasons: [],
      model: "default",
      model_parts: ["robust readings"],
      r_hat_max: 1.001,
      ess_bulk_min: 1000,
      ess_tail_min: 1000,
      divergences: 0,
      draws: 4000,
      seed: 1,
      cpu_seconds: 1,
    },
    cannot_say: [],
    taken_as: [],
  };
  return {
    format: "keenfall-report",
    format_version: 1,
    program_version: "0.1.0",
    title: "A trial made up",
    written_on: "2026-01-02",
    from: ["made.csv"],
    judgements: [
      {
        ...report,
        judgement,
        media_lasting_words: "cuts to half keenness",
        starts_words: "thread push reading at 0 cuts, gf",
        levels_words: "reading, times its start",
        order_words: "order of cutting",
        blocks: [],
      },
    ],
    trial: {
      name: "A trial made up",
      counted: "cuts",
      blades: blades.map((name) => ({ name, specimens: [] })),
      series: [
        {
          kind: "thread_push",
          kind_words: "thread push reading",
          unit: "gf",
          keener_when: "lower",
          makes_curves: true,
        },
      ],
      runs: trialRuns,
    },
  };
}
