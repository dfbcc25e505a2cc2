// What is asked once more before it is done: left, one is where one was.

import { tick } from "svelte";

export class AskedFirst {
  isAsked = $state(false);
  /** What asks; it has the focus again where the answer is no. */
  first: HTMLElement | undefined = $state();

  readonly ask = (): void => {
    this.isAsked = true;
  };
  readonly leave = async (): Promise<void> => {
    this.isAsked = false;
    await tick();
    this.first?.focus();
  };
}
