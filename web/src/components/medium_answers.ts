// Which of the answers told belong to a medium.

import type { Told } from "../wire/api";

type Answers = Told["answers"];

/** `medium`: its place in the report. Nothing where no edges are compared in it. */
export const answersOn = (answers: Answers, medium: number): Answers["media"][number] | undefined =>
  answers.media.find((told) => told.medium === medium);
