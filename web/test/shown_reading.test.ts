import { expect, test } from "vitest";
import { shownReading } from "../src/bench/shown_reading";

test("a reading has as many figures as say anything, in every unit", () => {
  expect(shownReading(91.52, 0)).toBe(92);
  expect(shownReading(104.25)).toBe(104.3);
  expect(shownReading(0.89751)).toBe(0.898);
  expect(shownReading(0.22928, 0)).toBe(0.229);
});
