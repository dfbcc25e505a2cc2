import { expect, test } from "vitest";
import { withGuesses } from "../src/app/grid/guesses";
import type { TableRead } from "../src/wire/api";

const read = (columns: TableRead["columns"]): TableRead => ({
  grids: [],
  columns,
  known_columns: [],
  sheets: [],
  problems: [],
  problem_count: 0,
  trial_name: "tally",
  noticed: [],
  remarks: [],
});

const sample = { theirs: "Sample", ours: "blade", guessed: true, to_be_chosen: true };

test("a guess that was shown is said as chosen", () => {
  expect(withGuesses({ shape: "long" }, read([sample]))).toEqual({
    shape: "long",
    columns: [{ ours: "blade", theirs: "Sample" }],
  });
});

test("what the person chose stands, and its column is not guessed too", () => {
  const chosen = { columns: [{ ours: "blade", theirs: "Knife no" }] };

  expect(withGuesses(chosen, read([sample]))).toEqual(chosen);
});

test("another usual name needs no choosing", () => {
  const knife = { theirs: "Knife", ours: "blade", guessed: true };

  expect(withGuesses({}, read([knife]))).toEqual({});
});

test("nothing read is nothing guessed", () => {
  expect(withGuesses({}, undefined)).toEqual({});
});
