// A trial as it is judged on its page: quick at once, then in full, and asked again whenever the
// person moves the margin or the level. One question is under way at a time; the newest follows it.

import * as api from "../api/endpoints";
import type { Judged, Problem, Question, Started } from "../wire/api";
import { problemsOf } from "./asking.svelte";
import { isStarted, LongWork, stopped } from "./work.svelte";

export class TrialJudging {
  /** The newest answer; it stays until another is there. */
  judged: Judged | undefined = $state.raw();
  question: Question = $state.raw({});
  problems: Problem[] = $state.raw([]);
  /** A question is under way whose answer is not there yet. */
  pending = $state(false);
  /** The full answer. */
  readonly work = new LongWork();
  /** A look at a trial of very many runs, which takes a while even quickly. */
  readonly looking = new LongWork();
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
    await Promise.all([this.work.stop(), this.looking.stop()]);
    await this.#catchUp();
    if (full && this.#engine === "quick") await this.workOut();
  }

  /** The full answer: work, and then whatever was asked meanwhile. */
  async workOut(): Promise<void> {
    const [asked, turn] = [this.question, this.#turn];
    try {
      const begun = await api.judge(this.#uid, { engine: "full", question: asked });
      const judged = await this.#made(this.work, begun, turn);
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
    void this.looking.stop();
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
      const judged = await this.#made(this.looking, answer, turn);
      const isOfNow = ofNow();
      if (judged && isOfNow) this.#show(judged);
      // The full answer was at hand already: what was changed was undone, say.
      if (judged?.engine === "full" && judged.can_ask_again && isOfNow) this.#fullOf = turn;
      return isOfNow && question === this.question;
    } catch (failure) {
      if (ofNow()) this.problems = problemsOf(failure);
    }
    return ofNow() && question === this.question;
  }

  #show(judged: Judged): void {
    this.judged = judged;
    this.problems = [];
  }

  /** What was answered, at once or by work; work that nobody waits for any more is stopped. */
  async #made(work: LongWork, answer: Judged | Started, turn: number): Promise<Judged | undefined> {
    if (!isStarted(answer)) return answer;
    if (turn !== this.#turn) {
      await stopped(answer.work);
      return undefined;
    }
    const result = await work.follow(async () => answer);
    return result?.json();
  }
}
