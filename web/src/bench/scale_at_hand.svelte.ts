// The scale while something is read: armed for this reading, and looked at until it holds one, which
// stays held until the next is armed for. What is wrong with it never keeps anybody from typing.
//
// Whoever armed last reads by it; another window on the same run is told so, and does not arm again
// until it reads the next one.

import * as api from "../api/endpoints";
import type { Scale } from "../wire/api";

const lookMs = 200;
const idleMs = 3_000;
const patienceMs = 3_000;
const place = "keenfall.bench.scale_holds";

export type Hold = "peak" | "stable";
/** Readings by pushing are the most before the thread parts. */
export const keptHold = (kept: Storage): Hold =>
  kept.getItem(place) === "stable" ? "stable" : "peak";
export const keepHold = (kept: Storage, hold: Hold): void => kept.setItem(place, hold);

export type HeldReading = NonNullable<NonNullable<Scale["state"]>["held"]>;

export class ScaleAtHand {
  told: Scale | undefined = $state.raw();
  held: HeldReading | undefined = $state.raw();
  /** Another window armed it since. */
  elsewhere = $state(false);
  readonly #unit: string;
  /** What was armed for this reading; absent: it has to be. */
  #hold: number | undefined;
  #left = false;
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
    this.#hold = undefined;
  }

  async #look(): Promise<void> {
    try {
      if (!document.hidden) await this.#ask();
    } catch {
      // It is tried again; that the program is away is said by the run.
    }
    if (!this.#left)
      this.#timer = setTimeout(() => void this.#look(), this.told?.used ? lookMs : idleMs);
  }

  async #ask(): Promise<void> {
    const before = this.#hold;
    const told = await api.scale(this.#unit, AbortSignal.timeout(patienceMs));
    this.told = told;
    // It may have been asked for anew meanwhile.
    if (!told.state || this.#left || before !== this.#hold) return;
    if (this.#hold === undefined) {
      this.told = await api.holdNext({ kind: keptHold(localStorage) });
      this.#hold = this.told.state?.hold;
      this.elsewhere = false;
      return;
    }
    this.elsewhere = told.state.hold !== this.#hold;
    if (!this.elsewhere) this.held = told.state.held;
  }
}
