// Long work that a page waits for: asked after every quarter of a second, and it can be stopped.

import * as api from "../api/endpoints";
import { Refused, Unanswered } from "../api/send";
import type { Problem, Started, Work } from "../wire/api";
import { problemsOf } from "./asking.svelte";

const everyMs = 250;
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Asks it to stop; where the program does not answer there is nothing to stop. */
export const stopped = (work: Work): Promise<unknown> => api.stopWork(work.id).catch(() => {});

export const isStarted = (answer: object): answer is Started => "work" in answer;

/** Answers at once or by work: the answer, once it is there. Throws why it is not. */
export async function answered<T extends object>(
  work: LongWork,
  answer: T | Started,
  signal?: AbortSignal,
): Promise<T> {
  if (!isStarted(answer)) return answer;
  const leave = () => void work.stop();
  signal?.addEventListener("abort", leave, { once: true });
  try {
    if (signal?.aborted) await stopped(answer.work);
    else {
      const result = await work.follow(async () => answer);
      if (result) return await result.json();
    }
  } finally {
    signal?.removeEventListener("abort", leave);
  }
  const sentence = "It was stopped before it was done, and nothing was changed.";
  const why =
    work.problems.length > 0 ? work.problems : [{ kind: "interrupted" as const, sentence }];
  throw new Refused(409, why);
}

export class LongWork {
  now: Work | undefined = $state.raw();
  problems: Problem[] = $state.raw([]);
  #followed = 0;

  get running(): boolean {
    return this.now?.state === "running" || this.now?.state === "waiting";
  }

  /** What the work made; nothing where it failed, was stopped, or other work was begun since. Work
      that nobody waits for any more is stopped. */
  async follow(begin: () => Promise<Started>): Promise<Response | undefined> {
    void this.stop();
    const mine = this.#followed;
    this.problems = [];
    try {
      const { work } = await begin();
      if (mine !== this.#followed) void stopped(work);
      this.#show(work, mine);
      while (mine === this.#followed && this.running) {
        await pause(everyMs);
        await this.#look(mine);
      }
      if (mine !== this.#followed || this.now?.state !== "done" || !this.now.result)
        return undefined;
      return await api.workResult(this.now.result);
    } catch (failure) {
      if (mine === this.#followed) {
        this.problems = problemsOf(failure);
        this.now = undefined;
      }
      return undefined;
    }
  }

  async stop(): Promise<void> {
    const left = this.running ? this.now : undefined;
    this.#followed += 1;
    this.now = undefined;
    if (left) await stopped(left);
  }

  async #look(mine: number): Promise<void> {
    if (mine !== this.#followed || !this.now) return;
    try {
      this.#show(await api.work(this.now.id), mine);
    } catch (failure) {
      // The strip says that the program does not answer; the work goes on where it comes back.
      if (!(failure instanceof Unanswered)) throw failure;
    }
  }

  #show(work: Work, mine: number): void {
    if (mine !== this.#followed) return;
    this.now = work;
    this.problems = work.state === "failed" ? (work.problems ?? []) : [];
  }
}
