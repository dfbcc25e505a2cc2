// Where a key leads from a cell of a sheet, as in a spreadsheet.

import type { Cell, Sheet } from "./sheet";
import { widthOf } from "./sheet";

export interface Pressed {
  key: string;
  shift: boolean;
  /** Ctrl or the key that stands for it. */
  control: boolean;
  /** Where the caret is in the cell's text: at its beginning, at its end, both where it is empty. */
  atStart: boolean;
  atEnd: boolean;
}

/** The next cell; nothing where the key is not one that moves. A row below the last is a new one. */
export function moved(sheet: Sheet, from: Cell, pressed: Pressed): Cell | undefined {
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
