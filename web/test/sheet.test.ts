import { describe, expect, test } from "vitest";
import { moved, type Pressed } from "../src/app/grid/moves";
import { begun, redone, stepped, undone } from "../src/app/grid/past";
import { blockOf } from "../src/app/grid/pasted";
import { plannedSheet } from "../src/app/grid/planned_sheet";
import { byCell, folded, placedProblems } from "../src/app/grid/problems_at";
import {
  blank,
  columnLetters,
  filled,
  headsReadings,
  holdsReadings,
  layoutOf,
  plainName,
  readingRows,
  type Sheet,
  textAt,
  widthOf,
  withBlock,
  withColumn,
  withHeaderRow,
  withoutRow,
  withRow,
  withText,
} from "../src/app/grid/sheet";
import type { TableRead } from "../src/wire/api";

const small: Sheet = [
  ["a", "b"],
  ["c", "d"],
];

describe("a sheet", () => {
  test("takes a text into its cell and leaves the others and itself as they were", () => {
    expect(withText(small, { row: 1, column: 0 }, "x")).toEqual([
      ["a", "b"],
      ["x", "d"],
    ]);
    expect(small[1]?.[0]).toBe("c");
  });

  test("grows to hold a block that reaches beyond it, every row as long as the others", () => {
    const grown = withBlock(small, { row: 1, column: 1 }, [["1", "2"], ["3"]]);

    expect(grown).toEqual([
      ["a", "b", ""],
      ["c", "1", "2"],
      ["", "3", ""],
    ]);
  });

  test("gets rows, columns and header rows where they belong", () => {
    expect(withRow(small, 0)).toEqual([
      ["a", "b"],
      ["", ""],
      ["c", "d"],
    ]);
    expect(withColumn(small, "note")[0]).toEqual(["a", "b", "note"]);
    const wide = withHeaderRow(blank("wide"), "steel");
    expect(wide.map(([label]) => label).slice(0, 7)).toEqual(
      ["blade", "medium", "run", "unit", "steel", "cuts", "0"], // before the readings
    );
  });

  test("keeps its last row", () => {
    expect(withoutRow(small, 0)).toEqual([["c", "d"]]);
    expect(withoutRow([["a"]], 0)).toEqual([["a"]]);
  });

  test("is sent without what is empty at its end, so that places of cells stay", () => {
    const sheet = withText(blank("long"), { row: 3, column: 4 }, "104");

    expect(filled(sheet)).toHaveLength(4);
    expect(filled(sheet)[1]).toEqual(["", "", "", "", ""]);
    expect(filled([["", " "]])).toEqual([]);
  });

  test.each(["wide", "long", "runs"] as const)(
    "that is blank and %s holds no readings",
    (layout) => {
      expect(holdsReadings(blank(layout), layout)).toBe(false);
      expect(layoutOf(blank(layout))).toBe(layout);
      expect(holdsReadings(blank(layout, "N"), layout)).toBe(false);
      expect(layoutOf(blank(layout, "N"))).toBe(layout);
    },
  );

  test("holds readings once one is typed, and not when only a blade is named", () => {
    const named = withText(blank("wide"), { row: 0, column: 1 }, "A");

    expect(holdsReadings(named, "wide")).toBe(false);
    expect(holdsReadings(withText(named, { row: 5, column: 1 }, "104"), "wide")).toBe(true);
  });
});

describe("a key in a sheet", () => {
  const press = (key: string, also: Partial<Pressed> = {}): Pressed => ({
    key,
    shift: false,
    control: false,
    atStart: true,
    atEnd: true,
    ...also,
  });

  test.each([
    [press("ArrowDown"), { row: 1, column: 0 }],
    [press("ArrowUp"), { row: 0, column: 0 }],
    [press("ArrowRight"), { row: 0, column: 1 }],
    [press("ArrowDown", { control: true }), { row: 1, column: 0 }],
    [press("Enter"), { row: 1, column: 0 }],
  ])("leads on: %o", (pressed, to) => {
    expect(moved(small, "long", { row: 0, column: 0 }, pressed)).toEqual(to);
  });

  test("stays in the text where the caret is within it", () => {
    const within = { atStart: false, atEnd: false };

    expect(moved(small, "long", { row: 0, column: 1 }, press("ArrowLeft", within))).toBeUndefined();
    expect(
      moved(small, "long", { row: 0, column: 0 }, press("ArrowRight", within)),
    ).toBeUndefined();
    expect(moved(small, "long", { row: 0, column: 0 }, press("a"))).toBeUndefined();
  });

  test("Enter below the last row asks for a new one", () => {
    expect(moved(small, "long", { row: 1, column: 1 }, press("Enter"))).toEqual({
      row: 2,
      column: 1,
    });
    expect(moved(small, "long", { row: 0, column: 1 }, press("Enter", { shift: true }))).toEqual({
      row: 0,
      column: 1,
    });
  });
});

describe("what is pasted", () => {
  test("is a block where it has tabs or lines, and plain text where it has neither", () => {
    expect(blockOf("1\t2\r\n3\t4\r\n")).toEqual([
      ["1", "2"],
      ["3", "4"],
    ]);
    expect(blockOf("104\n131")).toEqual([["104"], ["131"]]);
    expect(blockOf("104 gf")).toBeUndefined();
    expect(blockOf("104\n")).toBeUndefined();
  });

  test("keeps quoted lines, tabs and quotes in their cell", () => {
    expect(blockOf('"a\nb"\t"say ""x"""\nc\td')).toEqual([
      ["a b", 'say "x"'],
      ["c", "d"],
    ]);
  });
});

describe("the past of a sheet", () => {
  test("goes back and forth, and a new step forgets what was taken back", () => {
    const two = stepped(stepped(begun("a"), "b"), "c");

    expect(undone(two).now).toBe("b");
    expect(redone(undone(two)).now).toBe("c");
    expect(redone(stepped(undone(two), "x")).now).toBe("x");
    expect(undone(undone(undone(two))).now).toBe("a");
  });

  test("takes typing in one cell for one step", () => {
    const typed = stepped(stepped(stepped(begun(""), "1", "0:0"), "10", "0:0"), "104", "0:0");

    expect(typed.now).toBe("104");
    expect(undone(typed).now).toBe("");
  });
});

test("a blank sheet says the unit that is typed into it", () => {
  expect(blank("wide", "N").find(([label]) => label === "unit")?.[1]).toBe("N");
  expect(blank("long", "N")[0]).toContain("reading [N]");
  expect(blank("wide").flat()).not.toContain("N");
});

describe("a problem of a table", () => {
  const problem = {
    kind: "bad_value" as const,
    sentence: "“l31” is no number.",
    column: "reading",
  };
  const read = (problems: TableRead["problems"], row_numbers?: number[]): TableRead => ({
    grids: [{ source: 0, rows: small.map((row) => [...row]), row_numbers, row_count: 900 }],
    columns: [],
    problems,
    noticed: [],
    remarks: [],
  });

  test("belongs to the cell of the whole table, also where only some rows are shown", () => {
    const [placed] = placedProblems(
      read([{ source: 0, grid: 0, row: 1, column: 1, problem }], [1, 831]),
    );

    expect(placed).toMatchObject({ row: 830, column: 1, where: "row 831, reading" });
    expect(byCell(placed ? [placed] : []).has("0:830:1")).toBe(true);
  });

  test("of a row is at its first cell, and of the whole table at none", () => {
    const placed = placedProblems(
      read([{ grid: 0, row: 1, problem }, { problem: { ...problem, column: undefined } }]),
    );

    expect([...byCell(placed).keys()]).toEqual(["0:1:0"]);
    expect(placed[1]?.where).toBe("");
  });

  test("is one with those that differ in their cells alone", () => {
    const negative = (row: number, found: string) => ({
      grid: 0,
      row,
      column: 1,
      problem: { ...problem, sentence: `A reading cannot be negative, as “${found}” is.`, found },
    });
    const placed = placedProblems(
      read([negative(0, "-4"), { grid: 0, row: 1, column: 0, problem }, negative(1, "-15")]),
    );

    const kinds = folded(placed);

    expect(kinds.map(({ sentence }) => sentence)).toEqual([
      "A reading cannot be negative, as “-4” is.",
      "“l31” is no number.",
    ]);
    expect(kinds[0]?.all.map(({ row, found }) => [row, found])).toEqual([
      [0, "-4"],
      [1, "-15"],
    ]);
  });

  test("is in the sheet of the workbook that it stands in, and says which", () => {
    const sheet = (name: string) => ({
      source: 0,
      sheet: name,
      rows: [["a"], ["b"]],
      row_count: 2,
    });
    const workbook = {
      ...read([
        { source: 0, grid: 1, row: 1, column: 0, problem: { ...problem, cell: "cell A2" } },
        { source: 0, problem },
      ]),
      grids: [sheet("spring"), sheet("autumn")],
    };

    const placed = placedProblems(workbook);

    expect([...byCell(placed).keys()]).toEqual(["1:1:0"]);
    expect(placed[0]?.where).toBe("sheet autumn, cell A2");
    expect(placed[1]?.grid).toBeUndefined();
  });
});

test("the cell at a place beyond the sheet is empty", () => {
  expect(textAt(small, { row: 9, column: 9 })).toBe("");
  expect(widthOf([])).toBe(0);
});

describe("the sheet of a plan", () => {
  const plan = {
    cuttings: [
      { medium: "rope", method: { motion: "slice" as const }, checkpoint_cuts: [0, 10, 30] },
      { medium: "felt", lot: "7", checkpoint_cuts: [0, 5, 10] },
    ],
    arms: [
      { blade: "A", edge: { bevel_angle_per_side_deg: 17 }, cutting: 0 },
      { blade: "B", edge: { bevel_angle_per_side_deg: 15, finish: "9 µm" }, cutting: 1 },
    ],
    reading: { kind: "thread_push", repeats: 7 },
    stop: {},
    runs_each: 1,
    order_seed: 1,
    runs: [
      { arm: 1, block: 1, order: 1 },
      { arm: 0, block: 1, order: 2 },
    ],
  };

  const all = [
    { planned: 0, name: "1" },
    { planned: 1, name: "1" },
  ];

  test("has a column for each run, a row for each checkpoint, and what is said of all runs", () => {
    expect(plannedSheet(plan, [], all)?.sheet).toEqual([
      ["blade", "B", "A"],
      ["bevel angle per side (deg)", "15", "17"],
      ["medium", "felt", "rope"],
      ["run", "1", "1"],
      ["order", "1", "2"],
      ["cuts", "", ""],
      ["0", "", ""],
      ["5", "", ""],
      ["10", "", ""],
      ["30", "", ""],
      ["block", "1", "1"],
      ["kind", "thread push", "thread push"],
    ]);
  });

  test("says the unit that is typed into it, where that is another than the planned one", () => {
    const inNewtons = { ...plan, reading: { ...plan.reading, unit: "gf", told_unit: "N" } };

    expect(plannedSheet(inNewtons, [], all)?.sheet).toContainEqual(["unit", "N", "N"]);
  });

  const inFelt = { name: "1", blade: "B", medium: "felt" };
  const inRope = { name: "1", blade: "A", medium: "rope" };

  test("leaves out what is in, and calls the others as the program says", () => {
    const rope = plannedSheet(plan, [], [{ planned: 1, name: "1 again 2" }])?.sheet;
    expect(rope?.[0]).toEqual(["blade", "A"]);
    expect(rope).toContainEqual(["run", "1 again 2"]);
    expect(plannedSheet(undefined, [], [])).toBeUndefined();
  });

  test("has another run of each arm, said as planned, once all are in", () => {
    const further = plannedSheet(plan, [inFelt, inRope, { ...inRope, name: "4" }], []);

    expect(further?.further).toBe(true);
    expect(further?.sheet).toEqual([
      ["blade", "A", "B"],
      ["bevel angle per side (deg)", "17", "15"],
      ["medium", "rope", "felt"],
      ["run", "5", "2"],
      ["cuts", "", ""],
      ["0", "", ""],
      ["5", "", ""],
      ["10", "", ""],
      ["30", "", ""],
      ["kind", "thread push", "thread push"],
    ]);
  });

  test("holds no readings yet", () => {
    const sheet = plannedSheet(plan, [], all)?.sheet ?? [];

    expect(layoutOf(sheet)).toBe("wide");
    expect(holdsReadings(sheet, "wide")).toBe(false);
  });

  test("leads by Enter from a run's last reading to the next run's first, past its names", () => {
    const sheet = plannedSheet(plan, [], all)?.sheet ?? [];
    const enter = { key: "Enter", shift: false, control: false, atStart: true, atEnd: true };

    expect(readingRows(sheet)).toEqual({ first: 6, last: 9 });
    expect(moved(sheet, "wide", { row: 8, column: 1 }, enter)).toEqual({ row: 9, column: 1 });
    expect(moved(sheet, "wide", { row: 9, column: 1 }, enter)).toEqual({ row: 6, column: 2 });
    expect(moved(sheet, "wide", { row: 9, column: 2 }, enter)).toBeUndefined();
    expect(moved(sheet, "wide", { row: 4, column: 1 }, enter)).toEqual({ row: 6, column: 1 });
  });

  test("has a row over its readings in which nothing is typed", () => {
    const sheet = plannedSheet(plan, [], all)?.sheet ?? [];

    expect(headsReadings(sheet, "wide", 5)).toBe(true);
    expect(headsReadings(sheet, "wide", 6)).toBe(false);
    expect(headsReadings(withText(sheet, { row: 5, column: 1 }, "x"), "wide", 5)).toBe(false);
  });
});

test("columns have the letters that problems name", () => {
  expect([0, 5, 25, 26, 52, 701, 702].map(columnLetters)).toEqual(
    ["A", "F", "Z", "AA", "BA", "ZZ", "AAA"], // as spreadsheets count
  );
});

test("a name is known again however it is written", () => {
  expect(plainName("Bevel angle per side (deg)")).toBe("bevel_angle_per_side_deg");
  expect(plainName("medium condition")).toBe(plainName("medium_condition"));
});
