// One question that a page asks again and again: the newest counts, and the answer before it stays
// until the new one is there.

import { Refused, Unanswered } from "../api/send";
import type { Problem } from "../wire/api";

export function problemsOf(failure: unknown): Problem[] {
  // That another notebook is open is said once, for the whole page.
  if (failure instanceof Refused)
    return failure.problems.filter(({ kind }) => kind !== "another_notebook");
  if (failure instanceof Unanswered) return [];
  const sentence = failure instanceof Error ? failure.message : String(failure);
  return [{ kind: "failed", sentence }];
}

export class Asking<T> {
  answer: T | undefined = $state.raw();
  problems: Problem[] = $state.raw([]);
  pending = $state(false);
  #stop: AbortController | undefined;

  /** The answer, or nothing where it was refused or a newer question came. */
  async ask(how: (signal: AbortSignal) => Promise<T>): Promise<T | undefined> {
    this.#stop?.abort();
    const stop = new AbortController();
    this.#stop = stop;
    this.pending = true;
    try {
      const answer = await how(stop.signal);
      if (stop.signal.aborted) return undefined;
      this.answer = answer;
      this.problems = [];
      return answer;
    } catch (failure) {
      if (!stop.signal.aborted) this.problems = problemsOf(failure);
      return undefined;
    } finally {
      if (this.#stop === stop) this.pending = false;
    }
  }

  leave(): void {
    this.#stop?.abort();
  }

  /** As if it had never been asked. */
  forget(): void {
    this.leave();
    this.#stop = undefined;
    this.answer = undefined;
    this.problems = [];
    this.pending = false;
  }
}
