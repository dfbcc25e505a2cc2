import { describe, expect, test } from "vitest";
import { movedApart } from "../src/plots/end_labels";

const at = (...places: number[]) => places.map((y, place) => ({ text: String(place), y }));

describe("labels at the ends of lines", () => {
  test("those that are apart stay where they are", () => {
    expect(movedApart(at(10, 40, 90), 15)).toEqual(at(10, 40, 90));
  });

  test("those that are close keep their order and end a line's height apart", () => {
    const moved = movedApart(at(52, 50, 51, 20), 15);

    expect(moved.map(({ text }) => text)).toEqual(["3", "1", "2", "0"]);
    expect(moved.map(({ y }) => y)).toEqual([20, 36, 51, 66]);
  });

  test("groups that meet when they are moved become one", () => {
    const moved = movedApart(at(50, 50, 62, 62), 15).map(({ y }) => y);

    for (let place = 1; place < moved.length; place++) {
      expect((moved[place] ?? 0) - (moved[place - 1] ?? 0)).toBeCloseTo(15);
    }
    expect(moved.reduce((sum, y) => sum + y, 0) / 4).toBeCloseTo(56);
  });
});
