// Where a key leads from a cell of a sheet, as in a spreadsheet.

import type { Cell, Layout, Sheet } from "./sheet";
import { headsReadings, readingRows, widthOf } from "./sheet";

export interface Pressed {
  key: string;
  shift: boolean;
  /** Ctrl or the key that stands for it. */
  control: boolean;
  /** Where the caret is in the cell's text: at its beginning, at its end, both where it is empty. */
  atStart: boolean;
  atEnd: boolean;
}

/** Below the last reading of a run, where something else stands there: the next run's first one. */
function nextRun(sheet: Sheet, { row, column }: Cell): Cell | "none" | undefined {
  const readings = readingRows(sheet);
  if (!readings || column === 0 || row !== readings.last) return undefined;
  if (readings.last === sheet.length - 1) return undefined;
  return column + 1 < widthOf(sheet) ? { row: readings.first, column: column + 1 } : "none";
}

/** The next cell; nothing where the key leads nowhere. A row below the last is a new one. */
export function moved(
  sheet: Sheet,
  layout: Layout,
  from: Cell,
  pressed: Pressed,
): Cell | undefined {
  if (layout === "wide" && pressed.key === "Enter" && !pressed.shift) {
    const next = nextRun(sheet, from);
    if (next) return next === "none" ? undefined : next;
  }
  const to = neighbour(sheet, from, pressed);
  if (!to || to.column === 0 || !headsReadings(sheet, layout, to.row)) return to;
  // Nothing can be typed there.
  if (to.row === from.row) return undefined;
  const row = to.row + Math.sign(to.row - from.row);
  return row >= 0 && row < sheet.length ? { row, column: to.column } : undefined;
}

function neighbour(sheet: Sheet, from: Cell, pressed: Pressed): Cell | undefined {
  const { row, column } = from;
  const [bottom, right] = [sheet.length - 1, widthOf(sheet) - 1];
  switch (pressed.key) {
    case "ArrowUp":
      return { row: pressed.control ? 0 : Math.max(0, row - 1), column };
    case "ArrowDown":
      return { row: pressed.control ? bottom : Math.min(bottom, row + 1), column };
    case "Enter":
      return pressed.shift ? { row: Math.max(0, row - 1), column } : { row: row + 1, column };
    case "ArrowLeft":
      if (pressed.control) return { row, column: 0 };
      return pressed.atStart && column > 0 ? { row, column: column - 1 } : undefined;
    case "ArrowRight":
      if (pressed.control) return { row, column: right };
      return pressed.atEnd && column < right ? { row, column: column + 1 } : undefined;
    default:
      return undefined;
  }
}
