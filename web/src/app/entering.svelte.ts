// A table on its way in: typed or dropped, read again at each change, then taken in or left.

import * as api from "../api/endpoints";
import type { TableChoices, TableRead, TableSource, TakenTable } from "../wire/api";
import { Asking } from "./asking.svelte";
import { dropped } from "./dropped.svelte";
import { withGuesses } from "./grid/guesses";
import { begun, type Past, redone, stepped, undone } from "./grid/past";
import { blank, filled, holdsReadings, type Layout, layoutOf, type Sheet } from "./grid/sheet";
import { type Elsewhere, SheetKeeping } from "./sheet_keeping.svelte";
import { units } from "./units.svelte";
import { answered, LongWork } from "./work.svelte";

const pauseMs = 250;

const isSame = (one: Sheet, other: Sheet | undefined) =>
  JSON.stringify(one) === JSON.stringify(other);

export class EnteringTable {
  layout: Layout = $state("wide");
  past: Past<Sheet> = $state.raw(begun(blank("wide", units.chosen.force)));
  choices: TableChoices = $state.raw({});
  /** In another layout, with what was typed put away; until something else is done. */
  beganAnew = $state(false);
  readonly reading = new Asking<TableRead>();
  readonly taking = new Asking<TakenTable>();
  /** Of large tables. */
  readonly readingWork = new LongWork();
  readonly takingWork = new LongWork();
  /** Columns that a table may have, from the first answer on. */
  known: NonNullable<TableRead["known_columns"]> = $state.raw([]);
  readonly #trial: string | undefined;
  readonly #keeping: SheetKeeping;
  #force = units.chosen.force;
  #planned: Sheet | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /**
   * `trial`: where it goes; absent: a new one. `notebook`: what was typed is kept for each. `planned`:
   * what a sheet begins with where nothing was typed yet.
   */
  constructor(notebook: string, trial?: string, planned?: Sheet) {
    this.#trial = trial;
    this.#planned = planned;
    this.#keeping = new SheetKeeping(notebook, trial);
    const sheet = this.#keeping.held() ?? planned;
    if (sheet) {
      this.past = begun(sheet);
      this.layout = layoutOf(sheet);
    }
  }

  /** The same sheet was typed into elsewhere, or taken in, and stands so in the notebook. */
  get elsewhere(): "typed into" | "taken in" | undefined {
    const { elsewhere } = this.#keeping;
    if (elsewhere === undefined) return undefined;
    return elsewhere === "taken in" ? "taken in" : "typed into";
  }
  /** Larger than the notebook keeps: where it is kept instead. */
  get keptOnly(): "in this browser" | "on this page" | undefined {
    if (!this.#keeping.tooLarge) return undefined;
    return this.#keeping.noRoom ? "on this page" : "in this browser";
  }
  /** What was typed in another browser, or before this one was closed, is gone on with. */
  async look(): Promise<void> {
    const kept = await this.#keeping.look(() => (this.#isTyped() ? this.sheet : undefined));
    this.#goOnWith(kept);
  }
  async takeElsewhere(): Promise<void> {
    this.#goOnWith(await this.#keeping.takeElsewhere());
  }
  async writeOverElsewhere(): Promise<void> {
    await this.#keeping.writeOverElsewhere(this.sheet);
  }

  get sheet(): Sheet {
    return this.past.now;
  }
  get fromFiles(): boolean {
    return dropped.sources.length > 0;
  }
  /** Nothing to look through yet. */
  get empty(): boolean {
    return !this.fromFiles && !holdsReadings(this.sheet, this.layout);
  }

  change(sheet: Sheet, about?: string): void {
    this.#now(stepped(this.past, sheet, about));
  }
  undo(): void {
    this.#now(undone(this.past));
  }
  redo(): void {
    this.#now(redone(this.past));
  }
  begin(layout: Layout): void {
    const wasTyped = this.#isTyped();
    this.choices = {};
    this.change(blank(layout, units.chosen.force));
    this.layout = layout;
    this.beganAnew = wasTyped;
  }
  choose(choices: TableChoices): void {
    this.choices = { ...this.choices, ...choices };
    if (choices.decimal && this.#planned && !this.fromFiles) this.#writePlanned(choices.decimal);
    void this.read();
  }

  /** A sheet that nothing was typed into begins anew in the unit that is chosen, planned or blank. */
  inUnit(force: string | undefined, planned?: Sheet): void {
    if (planned && isSame(this.sheet, this.#planned)) this.#renew(planned);
    else if (isSame(this.sheet, blank(this.layout, this.#force)))
      this.#renew(blank(this.layout, force));
    this.#force = force;
    this.#planned = planned;
  }

  sources(): TableSource[] {
    if (this.fromFiles) return dropped.sources;
    return [{ name: "the typed sheet", cells: filled(this.sheet) }];
  }

  async read(): Promise<void> {
    clearTimeout(this.#timer);
    const sources = this.sources();
    const table = { sources, choices: this.choices, trial: this.#trial };
    const read = await this.reading.ask(async (signal) =>
      answered(this.readingWork, await api.readTable(table, signal), signal),
    );
    if (read?.known_columns) this.known = read.known_columns;
  }

  /** `into`: a trial that is there, in place of a new one. */
  async take(name: string, keepGood: boolean, into?: string): Promise<TakenTable | undefined> {
    const trial = this.#trial ?? into;
    const sent = this.fromFiles ? undefined : this.sheet;
    const table = {
      sources: this.sources(),
      choices: withGuesses(this.choices, this.reading.answer),
      trial,
      trial_name: trial ? undefined : name || undefined,
      keep_good: keepGood || undefined,
    };
    const taken = await this.taking.ask(async () =>
      answered(this.takingWork, await api.takeTable(table)),
    );
    if (taken) this.#forget(sent);
    return taken;
  }

  /** Tables from the disk are put away; what was typed before is there again. */
  putFilesAway(): void {
    dropped.sources = [];
    this.choices = {};
    void this.read();
  }

  leave(): void {
    clearTimeout(this.#timer);
    this.reading.leave();
  }

  #goOnWith(kept: Elsewhere | undefined): void {
    if (!kept) return;
    const begun = this.#planned ?? blank(this.layout, this.#force);
    this.#show(stepped(this.past, kept === "taken in" ? begun : kept.cells));
    void this.read();
  }

  /** What the plan says in the sheet is written as the person writes decimals. */
  #writePlanned(decimal: "point" | "comma"): void {
    const [from, to] = decimal === "comma" ? [".", ","] : [",", "."];
    const written = (text: string) => (/^\d+[.,]\d+$/.test(text) ? text.replace(from, to) : text);
    const planned = this.#planned?.map((row) => row.map(written));
    const sheet = this.sheet.map((row, at) =>
      row.map((text, place) => (this.#planned?.[at]?.[place] === text ? written(text) : text)),
    );
    this.#planned = planned;
    this.change(sheet);
  }

  #isTyped(): boolean {
    const begun = [blank(this.layout, this.#force), this.#planned];
    return !begun.some((sheet) => isSame(this.sheet, sheet));
  }

  #renew(sheet: Sheet): void {
    this.past = begun(sheet);
  }

  #now(past: Past<Sheet>): void {
    this.#show(past);
    this.#keeping.hold(past.now);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      void this.read();
      void this.#keeping.save(this.sheet);
    }, pauseMs);
  }

  #show(past: Past<Sheet>): void {
    this.beganAnew = false;
    this.past = past;
    this.layout = layoutOf(past.now);
  }

  /** `sent`: the sheet that was taken in; absent: files. What was typed since is not forgotten. */
  #forget(sent: Sheet | undefined): void {
    if (!sent) dropped.sources = [];
    else if (isSame(sent, this.sheet)) {
      this.#keeping.forget();
      this.past = begun(blank(this.layout, units.chosen.force));
    }
  }
}
