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
  #turn = 0;

  constructor(uid: string) {
    this.#uid = uid;
  }

  /** Quick, and then in full where that is wanted. */
  async look(full: boolean): Promise<void> {
    this.#turn += 1;
    await this.work.stop();
    await this.#catchUp("quick");
    if (full) await this.workOut();
  }

  /** The full answer: work, and then whatever was asked meanwhile. */
  async workOut(): Promise<void> {
    const asked = this.question;
    try {
      const begun = await api.judge(this.#uid, { engine: "full", question: asked });
      const judged = isStarted(begun) ? await this.#made(begun) : begun;
      if (!judged) return;
      this.#show(judged);
      if (asked !== this.question) await this.#catchUp("full");
    } catch (failure) {
      this.problems = problemsOf(failure);
    }
  }

  /** Asks with these changed; what is undefined is as the trial's claim and plan say. */
  ask(changes: Question): void {
    this.question = { ...this.question, ...changes };
    void this.#catchUp(this.#canAskFull ? "full" : "quick");
  }

  leave(): void {
    this.#turn += 1;
    void this.work.stop();
  }

  get #canAskFull(): boolean {
    return this.judged?.engine === "full" && this.judged.can_ask_again;
  }

  async #catchUp(engine: Judged["engine"]): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    this.pending = true;
    let asked: Question | undefined;
    let turn = -1;
    while (asked !== this.question || turn !== this.#turn) {
      asked = this.question;
      turn = this.#turn;
      await this.#askOnce({ engine, question: asked }, turn);
    }
    this.pending = false;
    this.#busy = false;
  }

  async #askOnce(
    how: { engine: Judged["engine"]; question: Question },
    turn: number,
  ): Promise<void> {
    try {
      const answer = await api.judge(this.#uid, how);
      const judged = isStarted(answer) ? await this.#made(answer) : answer;
      if (judged && turn === this.#turn) this.#show(judged);
    } catch (failure) {
      this.problems = problemsOf(failure);
    }
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
