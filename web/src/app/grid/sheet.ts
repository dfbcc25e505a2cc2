// A sheet that is typed: rows of cells, all rows equally long. Every function gives a new sheet.

export type Sheet = readonly (readonly string[])[];

export interface Cell {
  row: number;
  column: number;
}

export type Layout = "wide" | "long" | "runs";

const checkpoints = ["0", "1", "3", "7", "15", "31", "63"];

/**
 * What each layout begins with: the names of the table's columns, and room. `unit`: what readings are typed in;
 * it is written into the sheet, so that what is taken in says it.
 */
export function blank(layout: Layout, unit?: string): Sheet {
  if (layout === "long") {
    const reading = unit ? `reading [${unit}]` : "reading";
    return rectangle([["blade", "medium", "run", "cuts", reading]], 11);
  }
  if (layout === "runs") return rectangle([["blade", "medium", "run", "lasted", "failed_by"]], 9);
  const labels = ["blade", "medium", "run", "unit", "cuts", ...checkpoints];
  return rectangle(
    labels.map((label) => [label, label === "unit" && unit ? unit : "", "", "", ""]),
    labels.length,
  );
}

function rectangle(rows: readonly (readonly string[])[], height: number): Sheet {
  const width = Math.max(1, ...rows.map((row) => row.length));
  return Array.from({ length: Math.max(height, rows.length) }, (_, row) =>
    Array.from({ length: width }, (_, column) => rows[row]?.[column] ?? ""),
  );
}

export const widthOf = (sheet: Sheet): number => sheet[0]?.length ?? 0;
export const textAt = (sheet: Sheet, { row, column }: Cell): string => sheet[row]?.[column] ?? "";

/** The block with its left upper corner at the cell; the sheet grows where it reaches beyond. */
export function withBlock(sheet: Sheet, at: Cell, block: Sheet): Sheet {
  const height = Math.max(sheet.length, at.row + block.length);
  const width = Math.max(
    widthOf(sheet),
    at.column + Math.max(0, ...block.map((row) => row.length)),
  );
  return Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (_, column) => {
      const pasted = block[row - at.row]?.[column - at.column];
      return pasted ?? textAt(sheet, { row, column });
    }),
  );
}

export const withText = (sheet: Sheet, at: Cell, text: string): Sheet =>
  withBlock(sheet, at, [[text]]);

/** An empty row below the given one. */
export function withRow(sheet: Sheet, below: number): Sheet {
  const empty = Array.from({ length: widthOf(sheet) }, () => "");
  return [...sheet.slice(0, below + 1), empty, ...sheet.slice(below + 1)];
}

export function withColumn(sheet: Sheet, head = ""): Sheet {
  return sheet.map((row, place) => [...row, place === 0 ? head : ""]);
}

/** A row with its name above the rows of readings; where there are none, the last one. */
export function withHeaderRow(sheet: Sheet, name: string): Sheet {
  const cuts = cutsRow(sheet);
  const below = cuts < 0 ? sheet.length - 1 : cuts - 1;
  return withText(withRow(sheet, below), { row: below + 1, column: 0 }, name);
}

export function withoutRow(sheet: Sheet, row: number): Sheet {
  return sheet.length > 1 ? sheet.filter((_, place) => place !== row) : sheet;
}

const isEmpty = (text: string) => text.trim() === "";

/** Without the empty rows and columns at the end; places of cells stay as they are. */
export function filled(sheet: Sheet): string[][] {
  const height = sheet.findLastIndex((row) => !row.every(isEmpty)) + 1;
  const width = Math.max(0, ...sheet.map((row) => row.findLastIndex((text) => !isEmpty(text)) + 1));
  return sheet.slice(0, height).map((row) => row.slice(0, width));
}

// What is said of runs may stand below the readings as well as above them; its unit in brackets.
const isAboutRuns = (label = "") => /^(?!start$)[a-z_][a-z_ ()°]*$/i.test(label.trim());

const cutsRow = (sheet: Sheet) => sheet.findIndex((row) => row[0]?.trim().toLowerCase() === "cuts");

/** Whether the row only heads the readings of a wide sheet: there is nothing to type in it. */
export const headsReadings = (sheet: Sheet, layout: Layout, row: number): boolean =>
  layout === "wide" && row === cutsRow(sheet) && (sheet[row]?.slice(1).every(isEmpty) ?? false);

/** The rows of readings of a wide sheet, first and last; nothing where it has none. */
export function readingRows(sheet: Sheet): { first: number; last: number } | undefined {
  const first = cutsRow(sheet) + 1;
  const below = sheet.findIndex(([label], row) => row >= first && isAboutRuns(label));
  const last = (below < 0 ? sheet.length : below) - 1;
  return first > 0 && last >= first ? { first, last } : undefined;
}

/** Whether there is anything to look through: more than names and the places to read at. */
export function holdsReadings(sheet: Sheet, layout: Layout): boolean {
  if (layout !== "wide") return sheet.slice(1).some((row) => !row.every(isEmpty));
  const cuts = cutsRow(sheet);
  return sheet
    .slice(cuts + 1)
    .some(([label, ...cells]) => !isAboutRuns(label) && !cells.every(isEmpty));
}

/** A name of a row or column as it is compared: whatever its spaces, brackets and capitals. */
export const plainName = (name = ""): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "_")
    .replace(/^_|_$/g, "");

/** "A", "AA": as spreadsheets call their columns, and as problems name them. */
export function columnLetters(column: number): string {
  const before = Math.floor(column / 26);
  return (before > 0 ? columnLetters(before - 1) : "") + String.fromCharCode(65 + (column % 26));
}

/** The layout that a pasted or kept sheet has, by where it names blade and run. */
export function layoutOf(sheet: Sheet): Layout {
  const head = (sheet[0] ?? []).map((text) => text.trim().toLowerCase());
  if (head.includes("lasted")) return "runs";
  return head.some((text) => /^reading\b/.test(text)) ? "long" : "wide";
}
