import { describe, expect, test } from "vitest";
import { logTicks, shortened, spacedOut } from "../src/plots/numbers";

describe("numbers", () => {
  test.each([
    [90, 650, 7],
    [0.6, 4.6, 9],
    [97, 113, 6],
    [0.001, 1000, 5],
    [1, 1.01, 4],
  ])(
    "ticks from %d to %d stay inside, rise, and are at most %i but more than one",
    (low, high, most) => {
      const ticks = logTicks(low, high, most);

      expect(ticks.length).toBeGreaterThan(1);
      expect(ticks.length).toBeLessThanOrEqual(most + 1);
      expect(ticks).toEqual([...ticks].sort((a, b) => a - b));
      for (const tick of ticks) {
        expect(tick).toBeGreaterThanOrEqual(low * 0.99);
        expect(tick).toBeLessThanOrEqual(high * 1.01);
      }
    },
  );

  test("values too close to be read are left out, never the last", () => {
    const kept = spacedOut([0, 1, 2, 3, 10, 11, 12], (value) => value, 3);

    expect(kept).toEqual([0, 3, 12]);
    expect(spacedOut([], (value) => value, 3)).toEqual([]);
  });

  test("a long name is cut by characters, not by bytes", () => {
    expect(shortened("包丁包丁", 3)).toBe("包丁…");
    expect(shortened("A", 3)).toBe("A");
  });
});
