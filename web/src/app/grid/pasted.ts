// A block of cells as spreadsheets put it on the clipboard: tabs between cells, lines between rows, and
// quotes around a cell that holds either.

import type { Sheet } from "./sheet";

const line = /\r\n|\n|\r/;

function cellsOf(text: string): Sheet {
  const rows: string[][] = [[""]];
  let quoted = false;
  for (let place = 0; place < text.length; place++) {
    const letter = text.charAt(place);
    const row = rows[rows.length - 1] as string[];
    const last = row.length - 1;
    if (quoted) {
      if (letter !== '"') row[last] += letter;
      else if (text.charAt(place + 1) === '"') row[last] += text.charAt(++place);
      else quoted = false;
    } else if (letter === '"' && row[last] === "") quoted = true;
    else if (letter === "\t") row.push("");
    else if (letter === "\n") rows.push([""]);
    else row[last] += letter;
  }
  return rows;
}

/** Nothing where it is one cell's text, which is pasted as any text is. */
export function blockOf(text: string): Sheet | undefined {
  if (!text.includes("\t") && !line.test(text.trimEnd())) return undefined;
  const rows = cellsOf(text.replace(/\r\n?/g, "\n").replace(/\n+$/, ""));
  return rows.map((row) => row.map((cell) => cell.replace(/\s*\n\s*/g, " ").trim()));
}
