// A sheet that is being typed, kept in the notebook as well as in this browser: another browser has it
// too, and two who type at once do not write over each other unseen.

import * as api from "../api/endpoints";
import { Refused } from "../api/send";
import type { TypedSheet } from "../wire/api";
import type { Sheet } from "./grid/sheet";
import { forgetUnsent, keepUnsent, unsent } from "./unsent";

/** What this browser holds of a sheet, and which revision of the notebook's it goes on from. */
interface Held {
  cells: Sheet;
  revision: number;
  /** It stands so in the notebook. */
  saved: boolean;
}

/** What stands in the notebook: a sheet, or that it was taken in. */
export type Elsewhere = { cells: Sheet } | "taken in";

const isTooLarge = ({ problems }: Refused) => problems.some(({ kind }) => kind === "too_large");
/** Another job may only be writing: then the next change is kept with this one. */
const isConflict = ({ problems }: Refused) => problems.some(({ kind }) => kind === "conflicting");
const isSame = (one: Sheet, other: Sheet) => JSON.stringify(one) === JSON.stringify(other);

export class SheetKeeping {
  /** Where somebody else typed, or took it in; to be gone on with or written over. */
  elsewhere: Elsewhere | undefined = $state.raw();
  /** It is larger than the notebook keeps. */
  tooLarge = $state(false);
  /** This browser has no room for it either. */
  noRoom = $state(false);
  readonly #trial: string | undefined;
  readonly #place: string;
  #revision = 0;
  #saved = false;
  /** One request after the other: the next goes on from what the last one made. */
  #turn: Promise<unknown> = Promise.resolve();

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
    this.#saved = kept.saved;
    return kept.cells;
  }

  /**
   * Asks what the notebook holds. Out: what is to be gone on with in place of what stands here, if
   * anything is. `own`: what was typed here; absent: nothing was.
   */
  look(own: () => Sheet | undefined): Promise<Elsewhere | undefined> {
    return this.#next(async () => {
      const kept = await api.typedSheet(this.#trial);
      const typed = own();
      if (kept.revision === this.#revision) {
        if (typed && !(kept.cells && isSame(typed, kept.cells))) await this.#save(typed);
        return undefined;
      }
      const other = inNotebook(kept);
      const isOwnAndOlder = this.#saved || typed === undefined;
      if (typed && !isOwnAndOlder && !(kept.cells && isSame(typed, kept.cells))) {
        this.elsewhere = other;
        return undefined;
      }
      this.#goOnFrom(kept);
      return other;
    });
  }

  /** At once and in this browser. */
  hold(cells: Sheet): void {
    this.#saved = false;
    this.#keepHere(cells);
  }

  async save(cells: Sheet): Promise<void> {
    await this.#next(() => this.#save(cells));
  }

  /** The other one is what is gone on from. */
  takeElsewhere(): Promise<Elsewhere | undefined> {
    return this.#next(async () => {
      const kept = await api.typedSheet(this.#trial);
      this.elsewhere = undefined;
      this.#goOnFrom(kept);
      return inNotebook(kept);
    });
  }

  async writeOverElsewhere(own: Sheet): Promise<void> {
    await this.#next(async () => {
      const kept = await api.typedSheet(this.#trial);
      this.elsewhere = undefined;
      this.#revision = kept.revision;
      await this.#save(own);
    });
  }

  /** It was taken in. */
  forget(): void {
    forgetUnsent(localStorage, this.#place);
    this.tooLarge = false;
    this.noRoom = false;
    void this.#next(async () => {
      const asked = this.#revision;
      if (asked === 0) return;
      const { revision } = await api.forgetSheet(asked, this.#trial);
      if (revision === asked + 1) this.#revision = revision;
      else this.elsewhere = inNotebook(await api.typedSheet(this.#trial));
    });
  }

  async #save(cells: Sheet): Promise<void> {
    if (this.elsewhere) return;
    const sheet = { goes_on_from: this.#revision, cells: cells.map((row) => [...row]) };
    const kept = await api
      .keepSheet(sheet, this.#trial)
      .catch((failure: unknown) => this.#keptSo(cells, failure));
    this.tooLarge = false;
    this.#revision = kept.revision;
    const now = unsent<Held>(localStorage, this.#place);
    this.#saved = now === undefined || isSame(now.cells, cells);
    if (now) this.#keepHere(now.cells);
  }

  /** Another tab of this browser, which holds the same, may have kept it first: that is no conflict. */
  async #keptSo(cells: Sheet, failure: unknown): Promise<{ revision: number }> {
    if (!(failure instanceof Refused) || !isConflict(failure)) throw failure;
    const kept = await api.typedSheet(this.#trial);
    if (!kept.cells || !isSame(cells, kept.cells)) throw failure;
    return kept;
  }

  #goOnFrom(kept: TypedSheet): void {
    this.#revision = kept.revision;
    this.#saved = true;
    if (kept.cells) this.#keepHere(kept.cells);
    else forgetUnsent(localStorage, this.#place);
  }

  #keepHere(cells: Sheet): void {
    const held: Held = { cells, revision: this.#revision, saved: this.#saved };
    this.noRoom = !keepUnsent(localStorage, this.#place, held);
  }

  /**
   * What cannot be kept in the notebook is still held here: that nobody answers, or that the notebook may
   * only be read, the page says by itself.
   */
  #next<T>(work: () => Promise<T>): Promise<T | undefined> {
    const done = this.#turn.then(work).catch(async (failure: unknown) => {
      if (!(failure instanceof Refused)) return undefined;
      if (isTooLarge(failure)) this.tooLarge = true;
      if (!isConflict(failure)) return undefined;
      const kept = await api.typedSheet(this.#trial).catch(() => undefined);
      if (kept && kept.revision !== this.#revision) this.elsewhere = inNotebook(kept);
      return undefined;
    });
    this.#turn = done;
    return done;
  }
}

const inNotebook = ({ cells }: TypedSheet): Elsewhere => (cells ? { cells } : "taken in");
