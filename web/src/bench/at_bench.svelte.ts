// The run that is being cut, as this device sees it: how it stands, what waits to be kept, and whether
// the program answers. Every tap is in durable storage before it counts here.

import * as api from "../api/endpoints";
import { meant, Refused, Unanswered } from "../api/send";
import type { BenchEntry, BenchRun } from "../wire/api";
import { anyId } from "./any_id";
import { foreseen, type Standing } from "./foreseen";
import type { NotTaken, Tap, Taps } from "./taps";

const lookMs = 500;
const mostAtOnce = 500;
// A network that is gone swallows what is asked, and says nothing.
const patienceMs = 8_000;
const shortPatienceMs = 1_500;
const patience = (ms = patienceMs) => AbortSignal.timeout(ms);

/** Sent again it would be refused again. */
const isFinal = ({ problems }: Refused) =>
  problems.every(({ kind }) =>
    ["bad_value", "missing", "unknown_name", "conflicting"].includes(kind),
  );

const isOfAnother = ({ problems }: Refused) =>
  problems.some(({ kind }) => kind === "another_notebook");

export class AtBench {
  run: BenchRun | undefined = $state.raw();
  waiting: Tap[] = $state.raw([]);
  /** The program does not answer. */
  away = $state(false);
  /** Why there is nothing to be shown. */
  trouble: string | undefined = $state();
  notTaken: NotTaken[] = $state.raw([]);
  readonly standing: Standing | undefined = $derived(this.run && foreseen(this.run, this.#ofRun()));
  readonly #taps: Taps;
  readonly #uid: string;
  #sending = false;
  #tapped = 0;
  #atOnce = mostAtOnce;
  #timer: ReturnType<typeof setInterval> | undefined;

  constructor(taps: Taps, uid: string) {
    this.#taps = taps;
    this.#uid = uid;
  }

  async begin(): Promise<void> {
    this.waiting = await this.#taps.waiting();
    this.notTaken = await this.#taps.notTaken();
    // What waits may have arrived, and its answer not: sent again, it is told of with the run.
    if (this.waiting.length > 0) await this.send();
    if (!this.run && this.#ofRun().length === 0) await this.look();
    this.#timer = setInterval(() => void this.#again(), lookMs);
  }
  leave(): void {
    clearInterval(this.#timer);
  }

  async look(): Promise<void> {
    try {
      const tapped = this.#tapped;
      const run = await api.benchRun(this.#uid, patience());
      // What was tapped meanwhile may be in it already, and would count twice.
      if (!this.run || (this.#ofRun().length === 0 && tapped === this.#tapped)) this.#stands(run);
      this.away = false;
      if (this.waiting.length === 0) this.trouble = undefined;
    } catch (failure) {
      if (failure instanceof Unanswered) this.away = true;
      else if (failure instanceof Refused) this.trouble = failure.message;
      else throw failure;
    }
  }

  /** Counts once it is in this device's storage. Out: its id. */
  async tap(what: Omit<BenchEntry, "id" | "at_ms">): Promise<string> {
    const entry: BenchEntry = { id: anyId(), at_ms: Date.now(), ...what };
    const tap = await this.#taps.keep({ run: this.#uid, notebook: meant.notebook ?? "", entry });
    this.#tapped += 1;
    this.waiting = [...this.waiting, tap];
    void this.send();
    return entry.id;
  }

  /** Whether it is worth a second look. Nobody is held up where the program does not say so. */
  async surprises(cuts: number, reading: number, unit: string): Promise<boolean> {
    // What was tapped before it says what is to be expected.
    for (let looks = 0; looks < 40 && this.#ofRun().length > 0 && !this.away; looks++)
      await new Promise((done) => setTimeout(done, 25));
    if (this.away || this.#ofRun().length > 0) return false;
    try {
      const typed = { cuts, reading, unit };
      return (await api.lookAgain(this.#uid, typed, patience(shortPatienceMs))).look_again;
    } catch (failure) {
      if (failure instanceof Unanswered || failure instanceof Refused) return false;
      throw failure;
    }
  }

  async takeBack(): Promise<void> {
    const last = this.standing?.to_take_back;
    if (last) await this.tap({ what: "taken back", subject: last.id });
  }

  /** A run that is over and was taken out of its trial comes into it again. */
  async putInTrial(): Promise<void> {
    try {
      this.run = await api.tapped(this.#uid, { entries: [] }, { signal: patience() });
    } catch (failure) {
      if (failure instanceof Refused) this.trouble = failure.message;
      else if (failure instanceof Unanswered) this.away = true;
      else throw failure;
    }
  }

  /** In order, one run after another; what cannot be reached stays and is tried again. */
  async send(): Promise<void> {
    if (this.#sending) return;
    this.#sending = true;
    try {
      const closed = new Set<string>();
      for (let together = this.#nextOf(closed); together; together = this.#nextOf(closed))
        await this.#sendThem(together, closed);
    } catch (failure) {
      // It waits, and is tried again: another may be writing.
      if (failure instanceof Refused) this.trouble = failure.message;
      else if (failure instanceof Unanswered) this.away = true;
      else throw failure;
    } finally {
      this.#sending = false;
    }
  }

  /** Those of the first run whose notebook may be open; nothing where none wait. */
  #nextOf(closed: Set<string>): [Tap, ...Tap[]] | undefined {
    const open = this.waiting.filter(({ notebook }) => !closed.has(notebook));
    const [first, ...more] = open;
    if (!first) return undefined;
    const others = more.findIndex(({ run }) => run !== first.run);
    const most = this.#atOnce - 1;
    return [first, ...more.slice(0, others < 0 ? most : Math.min(others, most))];
  }

  /** `closed`: notebooks that are not open now; what is of them waits, and holds up nothing else. */
  async #sendThem(together: [Tap, ...Tap[]], closed: Set<string>): Promise<void> {
    const [{ run: uid, notebook }] = together;
    try {
      const entries = together.map(({ entry }) => entry);
      const run = await api.tapped(
        uid,
        { entries },
        {
          signal: patience(),
          notebook: notebook || undefined,
        },
      );
      this.away = false;
      if (closed.size === 0) this.trouble = undefined;
      if (uid === this.#uid) this.#stands(run);
    } catch (failure) {
      if (failure instanceof Refused && isOfAnother(failure)) {
        closed.add(notebook);
        this.trouble = failure.message;
        return;
      }
      if (!(failure instanceof Refused) || !isFinal(failure)) throw failure;
      // One that is refused does not hold up the others.
      this.#atOnce = 1;
      if (together.length > 1) return;
      this.#isNotWaiting(together);
      this.notTaken = await this.#taps.setAside(together, failure.message);
      if (this.waiting.length === 0) this.#atOnce = mostAtOnce;
      return;
    }
    if (together.length === this.waiting.length) this.#atOnce = mostAtOnce;
    this.#isNotWaiting(together);
    await this.#taps.forget(together);
  }

  /** On the page at once, so that nothing counts twice in between. */
  #isNotWaiting(taps: Tap[]): void {
    const gone = new Set(taps.map(({ seq }) => seq));
    this.waiting = this.waiting.filter(({ seq }) => !gone.has(seq));
  }

  async #again(): Promise<void> {
    if (this.#sending || document.hidden) return;
    if (this.waiting.length > 0) await this.send();
    if (this.#ofRun().length === 0) await this.look();
  }

  /** An answer that was under way when a later one came says less: entries are never fewer. */
  #stands(run: BenchRun): void {
    if (run.entries >= (this.run?.entries ?? 0)) this.run = run;
  }

  #ofRun(): BenchEntry[] {
    return this.waiting.filter(({ run }) => run === this.#uid).map(({ entry }) => entry);
  }
}
