// Which units a person reads and types in: one choice, remembered, everywhere the same.

import { keepToldIn, keptToldIn, type ToldIn } from "../api/told_in";
import { session } from "./session.svelte";
import { type ShownUnit, shownUnit } from "./shown_unit";

class Units {
  chosen: ToldIn = $state.raw(keptToldIn(localStorage));

  constructor() {
    // Another window of the app chose.
    addEventListener("storage", () => this.#take(keptToldIn(localStorage)));
  }

  choose(change: ToldIn): void {
    const chosen = { ...this.chosen, ...change };
    keepToldIn(localStorage, chosen);
    this.#take(chosen);
  }

  /** What a number that is kept in `unit` is shown and typed in. */
  shown(unit: string | undefined): ShownUnit {
    return shownUnit(unit, this.chosen, session.app?.units);
  }

  #take(chosen: ToldIn): void {
    if (chosen.force === this.chosen.force && chosen.length === this.chosen.length) return;
    this.chosen = chosen;
    session.turn += 1;
  }
}

export const units = new Units();
