// The scale while something is read: armed for the next reading, looked at until it holds one, and that
// one taken, once. What is wrong with it never keeps anybody from typing.

import * as api from "../api/endpoints";
import type { Scale, ScaleReading } from "../wire/api";

const lookMs = 200;
const idleMs = 3_000;
const place = "keenfall.bench.scale_holds";

export type Hold = "peak" | "stable";
/** Readings by pushing are the most before the thread parts. */
export const keptHold = (kept: Storage): Hold =>
  kept.getItem(place) === "stable" ? "stable" : "peak";
export const keepHold = (kept: Storage, hold: Hold): void => kept.setItem(place, hold);

export class ScaleAtHand {
  told: Scale | undefined = $state.raw();
  held: ScaleReading | undefined = $state.raw();
  readonly #unit: string;
  #left = false;
  /** For this reading: what was pressed before is not of it. */
  #isArmed = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(unit: string) {
    this.#unit = unit;
  }

  begin(): void {
    void this.#look();
  }
  leave(): void {
    this.#left = true;
    clearTimeout(this.#timer);
  }
  /** The next one is waited for. */
  again(): void {
    this.held = undefined;
    this.#isArmed = false;
  }

  async #look(): Promise<void> {
    try {
      this.told = await api.scale();
      const { state } = this.told;
      if (state && !this.held && !this.#left) {
        if (!this.#isArmed || !(state.is_armed || state.holds_one)) {
          this.#isArmed = true;
          this.told = await api.holdNext({ kind: keptHold(localStorage) });
        } else if (state.holds_one) {
          this.held = await api.takeFromScale({ unit: this.#unit });
        }
      }
    } catch {
      // It is tried again; that the program is away is said by the run.
    }
    if (!this.#left)
      this.#timer = setTimeout(() => void this.#look(), this.told?.used ? lookMs : idleMs);
  }
}
