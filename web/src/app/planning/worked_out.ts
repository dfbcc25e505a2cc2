// Chances that were worked out by imagined trials: kept in this browser for the plan that they are of,
// since working them out takes a while.

import type { Chances, PlanAsked } from "../../wire/api";
import { keepUnsent, unsent } from "../unsent";

interface WorkedOut {
  plan: string;
  /** Margin and assumptions. */
  rest: string;
  chances: Chances;
}

const isThing = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The same for what says the same, whatever the order of its fields and the words told with it. */
const asText = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    isThing(part)
      ? Object.fromEntries(
          Object.entries(part)
            .filter(([field]) => field !== "words")
            .sort(([a], [b]) => (a < b ? -1 : 1)),
        )
      : part,
  );

const written = ({ plan, claims, assumptions }: PlanAsked) => ({
  plan: asText(plan),
  rest: asText([claims?.[0]?.worth_it_margin, assumptions ?? {}]),
});
const place = (trial: string) => `chances.${trial}`;

export function keepWorkedOut(trial: string, asked: PlanAsked, chances: Chances): void {
  const kept: WorkedOut = { ...written(asked), chances };
  keepUnsent(localStorage, place(trial), kept);
}

/** Of that plan; where it is sealed, also by other assumptions than those that stand here now. */
export function workedOut(trial: string, asked: PlanAsked, sealed: boolean): Chances | undefined {
  const kept = unsent<WorkedOut>(localStorage, place(trial));
  const { plan, rest } = written(asked);
  return kept?.plan === plan && (sealed || kept.rest === rest) ? kept.chances : undefined;
}
