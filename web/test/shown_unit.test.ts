import { describe, expect, test } from "vitest";
import { keptOf, shownOf, shownUnit, shownWords } from "../src/app/shown_unit";

// 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 gf = 9.80665e-3 N, exactly (NIST SP 811 B.8).
const known = {
  force: [
    { unit: "gf", words: "grams (gf)", newton: 9.80665e-3 },
    { unit: "N", words: "newtons (N)", newton: 1 },
  ],
  length: [
    { unit: "mm", words: "millimetres (mm)", mm: 1, long_unit: "m", long_m: 1 },
    { unit: "in", words: "inches (in)", mm: 25.4, long_unit: "ft", long_m: 0.3048 },
  ],
};

describe("a number of a form", () => {
  const inches = shownUnit("mm", { length: "in" }, known);
  const newtons = shownUnit("gf", { force: "N" }, known);

  test("is typed in the unit that is shown, and kept in its own", () => {
    expect(inches.unit).toBe("in");
    expect(keptOf(0.015, inches)).toBe(0.381);
    expect(shownOf(0.381, inches)).toBe(0.015);
    expect(shownWords(0.381, inches)).toBe("0.015 in");
  });

  test("that is long is typed in feet beside inches", () => {
    const feet = shownUnit("m", { length: "in" }, known);

    expect(feet.unit).toBe("ft");
    expect(keptOf(100, feet)).toBe(30.48);
  });

  test("that is a reading follows the unit of force", () => {
    expect(newtons.unit).toBe("N");
    expect(shownOf(104, newtons)).toBe(1.02);
  });

  // As the program tells them: 104 gf are 1.01989 N, 107.2 gf 1.05127 N, and 1.05 N would be 107.1 gf.
  test.each([
    [100, inches, 3.94],
    [0.38, inches, 0.015],
    [107.2, newtons, 1.051],
    [0, inches, 0],
  ])("%f has no more figures than give it back", (kept, shown, told) => {
    expect(shownOf(kept, shown)).toBe(told);
  });

  test.each([0.015, 12.345, 3.94, 1, 100])("%f in is shown as it was typed", (typed) => {
    expect(shownOf(keptOf(typed, inches), inches)).toBe(typed);
  });

  test("is as it is kept where nothing is chosen, and angles always", () => {
    expect(shownUnit("mm", {}, known)).toEqual({ unit: "mm", kept: 1 });
    expect(shownUnit("mm", { length: "in" }, undefined)).toEqual({ unit: "mm", kept: 1 });
    expect(shownUnit("° per side", { length: "in", force: "N" }, known).kept).toBe(1);
    expect(keptOf(0.1, { unit: "mm", kept: 1 })).toBe(0.1);
  });
});
