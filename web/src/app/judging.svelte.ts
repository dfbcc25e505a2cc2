// A trial as it is judged on its page: quick at once, then in full, and asked again whenever the
// person moves the margin or the level. One question is under way at a time; the newest follows it.

import * as api from "../api/endpoints";
import type { Judged, Problem, Question, Started } from "../wire/api";
import { problemsOf } from "./asking.svelte";
import { LongWork } from "./work.svelte";

const isStarted = (answer: Judged | Started): answer is Started => "work" in answer;

export class TrialJudging {
  /** The newest answer; it stays until another is there. */
  judged: Judged | undefined = $state.raw();
  question: Question = $state.raw({});
  problems: Problem[] = $state.raw([]);
  /** A question is under way whose answer is not there yet. */
  pending = $state(false);
  readonly work = new LongWork();
  readonly #uid: string;
  #busy = false;
  /** Raised when the trial changed. */
  #turn = 0;
  /** The turn whose full answer is at hand, to be asked again at once. */
  #fullOf = -1;

  constructor(uid: string) {
    this.#uid = uid;
  }

  /** Quick, and then in full where that is wanted. */
  async look(full: boolean): Promise<void> {
    this.#turn += 1;
    await this.work.stop();
    await this.#catchUp();
    if (full) await this.workOut();
  }

  /** The full answer: work, and then whatever was asked meanwhile. */
  async workOut(): Promise<void> {
    const [asked, turn] = [this.question, this.#turn];
    try {
      const begun = await api.judge(this.#uid, { engine: "full", question: asked });
      const judged = isStarted(begun) ? await this.#made(begun) : begun;
      if (!judged || turn !== this.#turn) return;
      if (judged.can_ask_again) this.#fullOf = turn;
      this.#show(judged);
      if (asked !== this.question) await this.#catchUp();
    } catch (failure) {
      this.problems = problemsOf(failure);
    }
  }

  /** Asks with these changed; what is undefined is as the trial's claim and plan say. */
  ask(changes: Question): void {
    this.question = { ...this.question, ...changes };
    void this.#catchUp();
  }

  leave(): void {
    this.#turn += 1;
    void this.work.stop();
  }

  get #engine(): Judged["engine"] {
    return this.#fullOf === this.#turn ? "full" : "quick";
  }

  async #catchUp(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    this.pending = true;
    while (!(await this.#askNewest())) {
      // something newer was asked, or the full answer came, while this one was under way
    }
    this.pending = false;
    this.#busy = false;
  }

  /** Whether its answer is of what is asked now. */
  async #askNewest(): Promise<boolean> {
    const [question, turn, engine] = [this.question, this.#turn, this.#engine];
    const ofNow = () => turn === this.#turn && engine === this.#engine;
    try {
      const answer = await api.judge(this.#uid, { engine, question });
      const judged = isStarted(answer) ? await this.#made(answer) : answer;
      if (judged && ofNow()) this.#show(judged);
    } catch (failure) {
      if (ofNow()) this.problems = problemsOf(failure);
    }
    return ofNow() && question === this.question;
  }

  #show(judged: Judged): void {
    this.judged = judged;
    this.problems = [];
  }

  async #made(begun: Started): Promise<Judged | undefined> {
    const result = await this.work.follow(async () => begun);
    return result?.json();
  }
}
