// A report's values as the pictures take them: one judgement's arms, runs and comparisons with the
// words the report gives them. Nothing is computed here but which belongs to which.

import type { Report } from "../wire/report";
import { pattern } from "./look";
import { type MarkShape, markShape } from "./mark_shapes";

export type JudgedReport = Report["judgements"][number];
export type Judgement = JudgedReport["judgement"];
export type JudgedRun = Judgement["runs"][number];

/** Middle and ends of a quantity; the ends hold 95 %. */
export interface Interval {
  median: number;
  lo95: number;
  hi95: number;
}

export interface RunView {
  /** The same wherever the run appears: "0:12", judgement and place among its runs. */
  key: string;
  judged: JudgedRun;
  inReport: JudgedReport["runs"][number];
  recorded: Report["trial"]["runs"][number];
}

export interface ArmView {
  name: string;
  label: string;
  /** The name, behind its label where that is a number: "2: the new steel knife". */
  keyedName: string;
  /** For stroke-dasharray; empty is a solid line. */
  dashes: string;
  /** The mark of its readings and runs. */
  shape: MarkShape;
  arm: Judgement["arms"][number];
  /** Cuts to where the arms of its medium are compared; absent where they are not known there. */
  lasting?: JudgedReport["names"][number]["lasting"];
  /** "102 gf"; absent where nothing was read. */
  startWords?: string;
  /** Where each point of the arm's curve is, and what it reads there. */
  curveWords: JudgedReport["names"][number]["curve"];
  runs: RunView[];
}

export interface PairView {
  a: ArmView;
  b: ArmView;
  compared: Judgement["comparisons"][number];
  told: JudgedReport["comparisons"][number];
}

export interface MediumView {
  words: string;
  /** Where its edges are compared; each medium may have another level or reading. */
  at: JudgedReport["media"][number]["at"];
  /** "cuts to half keenness" */
  lastingWords: string;
  arms: ArmView[];
  pairs: PairView[];
}

export interface EffectView {
  effect: NonNullable<Judgement["factor_effects"]>["effects"][number];
  told: NonNullable<JudgedReport["factor_effects"]>[number];
}

export interface JudgementView {
  judgement: Judgement;
  /** What lasting is counted to where media stand side by side; empty where none do. */
  acrossWords: string;
  /** "thread push reading at 0 cuts, gf" */
  startsWords: string;
  /** "reading, times its start" */
  levelsWords: string;
  /** "order of cutting" */
  orderWords: string;
  /** Empty where there is one alone, or they were mixed. */
  blocks: JudgedReport["blocks"];
  effects: EffectView[];
  arms: ArmView[];
  pairs: PairView[];
  media: MediumView[];
  /** The media whose blades are compared across them; empty where none are. */
  mediaCompared: MediumColumn[];
}

/** A medium and its arms, with how long they last to where the media are compared, which may be
 * elsewhere than in each by itself: the same blades in the same order in every column. */
export interface MediumColumn {
  words: string;
  arms: ArmView[];
}

/** What stands at `place`; a report that lacks it was not written by this program. */
export function at<T>(things: readonly T[], place: number): T {
  const thing = things[place];
  if (thing === undefined) throw new Error(`the report has no entry ${place} of ${things.length}`);
  return thing;
}

function runViews(report: Report, index: number): RunView[] {
  const judged = at(report.judgements, index);
  return judged.judgement.runs.map((run, place) => {
    const inReport = at(judged.runs, place);
    const recorded = at(report.trial.runs, inReport.run);
    return { key: `${index}:${place}`, judged: run, inReport, recorded };
  });
}

export function judgementView(report: Report, index: number): JudgementView {
  const judged = at(report.judgements, index);
  const { judgement } = judged;
  const labels = [...new Set(judged.names.map((name) => name.label))];
  const runs = runViews(report, index);
  const arms = judgement.arms.map((arm, place): ArmView => {
    const told = at(judged.names, place);
    return {
      name: told.name,
      label: told.label,
      keyedName: told.label === told.name ? told.name : `${told.label}: ${told.name}`,
      dashes: pattern(labels.indexOf(told.label)),
      shape: markShape(labels.indexOf(told.label)),
      arm,
      lasting: told.lasting,
      startWords: told.start_words,
      curveWords: told.curve,
      runs: runs.filter((run) => run.judged.arm === place),
    };
  });
  const pairs = judgement.comparisons.map((compared, place): PairView => {
    const told = at(judged.comparisons, place);
    return { a: at(arms, told.a), b: at(arms, told.b), compared, told };
  });
  const media = judged.media.map(
    (medium): MediumView => ({
      words: medium.words,
      at: medium.at,
      lastingWords: medium.lasting_words,
      arms: medium.arms.map((place) => at(arms, place)),
      pairs: medium.comparisons.map((place) => at(pairs, place)),
    }),
  );
  const mediaCompared = (judgement.media_compared?.media ?? []).map((column): MediumColumn => {
    const columnArms = column.arms.map((place, blade) => ({
      ...at(arms, place),
      lasting: { ...at(column.lasting, blade), words: "" },
    }));
    const medium = media.find((candidate) => candidate.arms.includes(at(arms, at(column.arms, 0))));
    return { words: medium?.words ?? "", arms: columnArms };
  });
  const acrossWords = judged.media_lasting_words ?? "";
  const effects = (judgement.factor_effects?.effects ?? []).map(
    (effect, place): EffectView => ({ effect, told: at(judged.factor_effects ?? [], place) }),
  );
  return {
    judgement,
    acrossWords,
    startsWords: judged.starts_words,
    levelsWords: judged.levels_words,
    orderWords: judged.order_words,
    blocks: judged.blocks,
    effects,
    arms,
    pairs,
    media,
    mediaCompared,
  };
}
