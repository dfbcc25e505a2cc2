// A sheet that is being typed, kept in the notebook as well as in this browser: another browser has it
// too, and two who type at once do not write over each other unseen.

import * as api from "../api/endpoints";
import { Refused, Unanswered } from "../api/send";
import type { Sheet } from "./grid/sheet";
import { forgetUnsent, keepUnsent, unsent } from "./unsent";

/** What this browser holds of a sheet, and which revision of the notebook's it goes on from. */
interface Held {
  cells: Sheet;
  revision: number;
}

const conflict = 409;
const isSame = (one: Sheet, other: Sheet) => JSON.stringify(one) === JSON.stringify(other);

export class SheetKeeping {
  /** What stands in the notebook, where somebody else typed there; to be looked at or written over. */
  elsewhere: Sheet | undefined = $state.raw();
  readonly #trial: string | undefined;
  readonly #place: string;
  #revision = 0;
  /** One request after the other: the next goes on from what the last one made. */
  #turn: Promise<void> = Promise.resolve();

  /** `trial`: absent for a new one. `notebook`: its uid; what this browser holds is of one notebook. */
  constructor(notebook: string, trial?: string) {
    this.#trial = trial;
    this.#place = `table.${notebook}.${trial ?? "new"}`;
  }

  /** What this browser holds; nothing where it holds none. */
  held(): Sheet | undefined {
    const kept = unsent<Held>(localStorage, this.#place);
    if (!kept?.cells?.length) return undefined;
    this.#revision = kept.revision;
    return kept.cells;
  }

  /**
   * Asks what the notebook holds. Out: that, where nothing else was typed here. `own`: what was typed
   * here; absent: nothing was.
   */
  async look(own: () => Sheet | undefined): Promise<Sheet | undefined> {
    const kept = await api.typedSheet(this.#trial).catch(passOver);
    if (!kept?.cells || kept.revision === this.#revision) {
      const typed = own();
      if (kept && typed && !(kept.cells && isSame(typed, kept.cells))) void this.save(typed);
      return undefined;
    }
    const typed = own();
    if (typed && !isSame(typed, kept.cells)) {
      this.elsewhere = kept.cells;
      return undefined;
    }
    this.#revision = kept.revision;
    this.hold(kept.cells);
    return kept.cells;
  }

  /** At once and in this browser. */
  hold(cells: Sheet): void {
    keepUnsent(localStorage, this.#place, { cells, revision: this.#revision } satisfies Held);
  }

  save(cells: Sheet): Promise<void> {
    return this.#next(async () => {
      if (this.elsewhere) return;
      const kept = await api.keepSheet(
        { goes_on_from: this.#revision, cells: cells.map((row) => [...row]) },
        this.#trial,
      );
      this.#revision = kept.revision;
      this.hold(cells);
    });
  }

  /** The other one is what is gone on from: out, to be typed into. */
  async takeElsewhere(): Promise<Sheet | undefined> {
    const kept = await api.typedSheet(this.#trial).catch(passOver);
    this.elsewhere = undefined;
    if (!kept?.cells) return undefined;
    this.#revision = kept.revision;
    this.hold(kept.cells);
    return kept.cells;
  }

  async writeOverElsewhere(own: Sheet): Promise<void> {
    const kept = await api.typedSheet(this.#trial).catch(passOver);
    this.elsewhere = undefined;
    if (kept) this.#revision = kept.revision;
    await this.save(own);
  }

  /** It was taken in. */
  forget(): void {
    forgetUnsent(localStorage, this.#place);
    void this.#next(async () => {
      const kept = await api.forgetSheet(this.#revision, this.#trial);
      this.#revision = kept.revision;
    });
  }

  /** What cannot be kept in the notebook is still held here. */
  #next(work: () => Promise<void>): Promise<void> {
    this.#turn = this.#turn.then(work).catch(async (failure) => {
      if (!(failure instanceof Refused) || failure.status !== conflict) return passOver(failure);
      const kept = await api.typedSheet(this.#trial).catch(passOver);
      if (kept?.cells) this.elsewhere = kept.cells;
      return undefined;
    });
    return this.#turn;
  }
}

/** The page says by itself that nobody answers, or that the notebook may only be read. */
function passOver(failure: unknown): undefined {
  if (failure instanceof Refused || failure instanceof Unanswered) return undefined;
  throw failure;
}
