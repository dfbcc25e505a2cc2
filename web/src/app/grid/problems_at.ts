// Which cell each problem of a table belongs to.

import type { CellProblem, TableRead } from "../../wire/api";

export interface PlacedProblem {
  /** For the element that holds its words, and for the cell that refers to it. */
  id: string;
  grid: number;
  /** Row and column of the table itself, from 0; absent where it is of a whole row or table. */
  row?: number;
  column?: number;
  /** "row 5, cuts"; empty: of the whole table */
  where: string;
  sentence: string;
  accepted?: string;
}

export const cellKey = (grid: number, row: number, column: number): string =>
  `${grid}:${row}:${column}`;

function placed(read: TableRead, problem: CellProblem, place: number): PlacedProblem {
  const { sentence, accepted, column: named, cell } = problem.problem;
  const found = read.grids.findIndex(({ source }) => source === (problem.source ?? 0));
  const grid = Math.max(0, found);
  const shown = problem.row;
  const numbers = read.grids[grid]?.row_numbers;
  const row = shown === undefined ? undefined : (numbers?.[shown] ?? shown + 1) - 1;
  const words = [
    row === undefined ? undefined : `row ${row + 1}`,
    named ?? (problem.column === undefined ? undefined : `column ${problem.column + 1}`),
  ].filter((part) => part !== undefined);
  return {
    id: `problem-${place}`,
    grid,
    row,
    column: problem.column,
    where: cell ?? words.join(", "),
    sentence,
    accepted,
  };
}

export function placedProblems(read: TableRead | undefined): PlacedProblem[] {
  return (read?.problems ?? []).map((problem, place) => placed(read as TableRead, problem, place));
}

/** By cell; of a row without a column, by its first cell. */
export function byCell(problems: PlacedProblem[]): Map<string, PlacedProblem> {
  const cells = new Map<string, PlacedProblem>();
  for (const problem of problems) {
    if (problem.row === undefined) continue;
    const key = cellKey(problem.grid, problem.row, problem.column ?? 0);
    if (!cells.has(key)) cells.set(key, problem);
  }
  return cells;
}
