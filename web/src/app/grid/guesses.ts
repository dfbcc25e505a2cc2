// What was guessed of a table's columns, said as chosen: who takes the table in has seen it.

import type { TableChoices, TableRead } from "../../wire/api";

/** The choices with every guess that was shown. A column that the person chose stays as chosen. */
export function withGuesses(choices: TableChoices, read: TableRead | undefined): TableChoices {
  const columns = [...(choices.columns ?? [])];
  for (const { theirs, ours, to_be_chosen } of read?.columns ?? []) {
    const isChosen = columns.some((column) => column.theirs === theirs || column.ours === ours);
    if (to_be_chosen && ours && !isChosen) columns.push({ ours, theirs });
  }
  return columns.length > 0 ? { ...choices, columns } : choices;
}
