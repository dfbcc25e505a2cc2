// Which cell each problem of a table belongs to.

import type { CellProblem, TableRead } from "../../wire/api";

export interface PlacedProblem {
  /** For the element that holds its words, and for the cell that refers to it. */
  id: string;
  /** Which of the tables that were read; absent where it is of a file as a whole. */
  grid?: number;
  /** Row and column of the table itself, from 0; absent where it is of a whole row or table. */
  row?: number;
  column?: number;
  /** "row 5, cuts"; empty: of the whole table */
  where: string;
  sentence: string;
  accepted?: string;
  /** Something is not there, which may still be typed. */
  missing: boolean;
  /** What stands in the cell. */
  found?: string;
}

/** Problems that differ in their cells alone, and in what stands there. */
export interface AlikeProblems {
  id: string;
  /** Of the first. */
  sentence: string;
  accepted?: string;
  all: PlacedProblem[];
}

export const cellKey = (grid: number, row: number, column: number): string =>
  `${grid}:${row}:${column}`;

type ShownGrid = TableRead["grids"][number];

const isSaid = (part: string | undefined) => part !== undefined && part !== "";

/** Of the whole table, from 0; of the rows shown it is the given one. */
function rowOfTable({ row_numbers }: ShownGrid, shown: number): number {
  return (row_numbers?.[shown] ?? shown + 1) - 1;
}

function placed(read: TableRead, problem: CellProblem, id: string): PlacedProblem {
  const { sentence, accepted, column: named, cell, found } = problem.problem;
  const grid = problem.grid === undefined ? undefined : read.grids[problem.grid];
  const row = grid && problem.row !== undefined ? rowOfTable(grid, problem.row) : undefined;
  const at = [
    row === undefined ? undefined : `row ${row + 1}`,
    named ?? (problem.column === undefined ? undefined : `column ${problem.column + 1}`),
  ];
  const sheet = read.grids.length > 1 && grid?.sheet ? `sheet ${grid.sheet}` : undefined;
  return {
    id,
    grid: problem.grid,
    row,
    column: problem.column,
    where: [sheet, ...(cell ? [cell] : at)].filter(isSaid).join(", "),
    sentence,
    accepted,
    missing: problem.problem.kind === "missing",
    found,
  };
}

export function placedProblems(read: TableRead | undefined): PlacedProblem[] {
  return (read?.problems ?? []).map((problem, place) =>
    placed(read as TableRead, problem, `problem-${place}`),
  );
}

/** What is taken as it stands, and may be a slip. */
export function placedNoticed(read: TableRead | undefined): PlacedProblem[] {
  return (read?.noticed ?? []).map((noticed, place) =>
    placed(read as TableRead, noticed, `noticed-${place}`),
  );
}

/** What is quoted, and numbers, are of the cell; the rest of a sentence is its kind. */
const kindOf = ({ sentence, accepted }: PlacedProblem) =>
  [sentence, accepted]
    .map((text = "") => text.replace(/“[^”]*”/g, "“”").replace(/\d+([.,]\d+)?/g, "0"))
    .join("\n");

export function folded(problems: readonly PlacedProblem[]): AlikeProblems[] {
  const kinds = new Map<string, PlacedProblem[]>();
  for (const problem of problems) {
    const kind = kindOf(problem);
    kinds.set(kind, [...(kinds.get(kind) ?? []), problem]);
  }
  return [...kinds.values()].map((all) => {
    const { id, sentence, accepted } = all[0] as PlacedProblem;
    return { id, sentence, accepted, all };
  });
}

/** Without what a row lacks that is being typed. */
export const besides = (problems: PlacedProblem[], typedRow: number | undefined): PlacedProblem[] =>
  problems.filter(({ missing, row }) => !missing || row === undefined || row !== typedRow);

/** By cell; of a row without a column, by its first cell. */
export function byCell(problems: PlacedProblem[]): Map<string, PlacedProblem> {
  const cells = new Map<string, PlacedProblem>();
  for (const problem of problems) {
    if (problem.grid === undefined || problem.row === undefined) continue;
    const key = cellKey(problem.grid, problem.row, problem.column ?? 0);
    if (!cells.has(key)) cells.set(key, problem);
  }
  return cells;
}
