// The steps of a trial's path as the margin lists them: those of the program, and typing in what was cut.

import type { StepName } from "../app/router";
import type { TrialCard } from "../wire/api";

export interface PathStep {
  step: StepName;
  name: string;
  state: "done" | "next" | "ready" | "waiting";
  words: string;
}

const names: Record<StepName, string> = {
  ask: "Ask",
  plan: "Plan",
  enter: "Enter",
  judge: "Judge",
  tell: "Tell",
};

export const stepTitle = (step: StepName): string => names[step];

function counted({ runs, readings }: TrialCard): string {
  if (runs === 0) return "Nothing is entered yet.";
  const of = runs === 1 ? "1 run" : `${runs} runs`;
  return readings === 1 ? `${of}, 1 reading` : `${of}, ${readings} readings`;
}

/** Typing in what was cut is what judging waits for. */
export function nextStep({ next, runs }: TrialCard): StepName {
  return next.step === "judge" && runs === 0 ? "enter" : next.step;
}

function entering(card: TrialCard): PathStep {
  const enter = { step: "enter" as const, name: names.enter };
  if (nextStep(card) === "enter") return { ...enter, state: "next", words: card.next.words };
  return { ...enter, state: card.runs > 0 ? "done" : "ready", words: counted(card) };
}

/** What is said of judging while that waits for readings stands where they are entered. */
export function pathSteps(card: TrialCard | undefined): PathStep[] {
  if (!card) return [];
  const enter = entering(card);
  return card.steps.flatMap((step) => {
    const named = { ...step, name: names[step.step] };
    if (step.step !== "judge") return [named];
    return [
      enter,
      enter.state === "next" ? { ...named, words: "There are no readings yet." } : named,
    ];
  });
}
