// What the cells of a sheet are called, and what an empty one shows as an example.

import { type Cell, columnLetters, type Layout, type Sheet } from "../app/grid/sheet";

/** "blade, column B": by the name of its row or column. */
export function cellLabel(sheet: Sheet, layout: Layout, { row, column }: Cell): string {
  if (layout === "wide") {
    if (column === 0) return `name of row ${row + 1}`;
    const name = sheet[row]?.[0]?.trim();
    const counts = name && /^[\d.,]+$/.test(name) ? `reading after ${name}` : name;
    return `${counts || `row ${row + 1}`}, column ${columnLetters(column)}`;
  }
  if (row === 0) return `name of column ${columnLetters(column)}`;
  return `${sheet[0]?.[column]?.trim() || `column ${columnLetters(column)}`}, row ${row + 1}`;
}

const examples: Record<string, string[]> = {
  blade: ["A", "", "B"],
  medium: ["sisal rope"],
  run: ["1", "2", "1", "2"],
  unit: ["gf"],
  cuts: ["0", "15"],
  reading: ["104", "131"],
  lasted: ["40"],
  failed_by: ["50"],
};

/** Only in a sheet that nothing was typed into yet, and only where it begins: "such as 104". */
export function placeholderAt(sheet: Sheet, layout: Layout, cell: Cell): string {
  const example = exampleAt(sheet, layout, cell);
  return example === "" ? "" : `such as ${example}`;
}

function exampleAt(sheet: Sheet, layout: Layout, { row, column }: Cell): string {
  if (layout === "wide") {
    const name = sheet[row]?.[0] ?? "";
    if (name === "cuts" || sheet[row]?.slice(1).some((text) => text !== "")) return "";
    return column === 0 ? "" : (examples[name]?.[column - 1] ?? "");
  }
  const begun = sheet.slice(1).some((line) => line.some((text) => text !== ""));
  return begun || row === 0 ? "" : (examples[sheet[0]?.[column] ?? ""]?.[row - 1] ?? "");
}
