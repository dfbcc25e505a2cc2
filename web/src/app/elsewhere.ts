// A change that was refused because somebody else changed the same since it was looked at.

import type { Problem } from "../wire/api";

export const isElsewhere = ({ kind, column }: Problem): boolean =>
  kind === "conflicting" && column === "revision";

export const besidesElsewhere = (problems: Problem[]): Problem[] =>
  problems.filter((problem) => !isElsewhere(problem));
