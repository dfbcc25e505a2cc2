import { describe, expect, test } from "vitest";
import { numbersIn } from "../src/app/planning/draft";
import {
  neededWords,
  numberTyped,
  spreadTyped,
  within,
  withoutPlusMinus,
  withoutUnit,
} from "../src/app/typed_number";

describe("a number that is typed", () => {
  test.each([
    ["58 HRC", "HRC", 58],
    ["15°", "° per side", 15],
    ["15 ° per side", "° per side", 15],
    ["220 mm", "mm", 220],
    ["1,5 times", "times as long", 1.5],
    ["12 µm", "um", 12],
    [" 0.38 ", "mm", 0.38],
    ["-5", undefined, -5],
  ])("%s in a field of %s is %f", (text, unit, number) => {
    expect(numberTyped(text, unit)).toBe(number);
  });

  test.each([
    ["220 m", "mm"],
    ["58 HV", "HRC"],
    ["hard", "HRC"],
    ["0x1F", "mm"],
    ["Infinity", "mm"],
    ["mm", "mm"],
    ["", "mm"],
    ["15 mm", undefined],
  ])("%s is none in a field of %s", (text, unit) => {
    expect(numberTyped(text, unit)).toBeUndefined();
  });

  test("is one of a list with its unit as well", () => {
    expect(numbersIn(withoutUnit("15°, 17.5 °", "°"))).toEqual([15, 17.5]);
    expect(numbersIn(withoutUnit("15 mm, 20", "°"))).toBeUndefined();
  });

  test.each([
    ["58-60", 59, 1],
    ["58 – 60 HRC", 59, 1],
    ["60-58", 59, 1],
    ["58 HRC to 59,5 HRC", 58.75, 0.75],
    ["60.1-60.4", 60.25, 0.15],
    ["58 ± 1", 58, 1],
    ["58+/-0.5 HRC", 58, 0.5],
  ])("%s as a range of hardness is %f, plus or minus %f", (text, middle, half) => {
    expect(spreadTyped(text, "HRC")).toEqual({ middle, half });
  });

  test.each(["58", "58-58", "58-", "-58", "58-60 HV", "5e-3", "58-60-62"])(
    "%s is no range of hardness",
    (text) => {
      expect(spreadTyped(text, "HRC")).toBeUndefined();
    },
  );

  test("may say once more that it is give or take", () => {
    expect(["±1", "+/- 0.5", "1"].map(withoutPlusMinus)).toEqual(["1", "0.5", "1"]);
  });

  test("has bounds, which are told", () => {
    const angle = { above: 0, below: 90 };
    expect([0, 15, 90].map((deg) => within(deg, angle))).toEqual([false, true, false]);
    expect(neededWords(angle)).toBe("A number above 0 and below 90.");
    expect(neededWords({ least: 2, whole: true })).toBe("A whole number, 2 or more.");
    expect(within(2.5, { least: 2, whole: true })).toBe(false);
  });
});
