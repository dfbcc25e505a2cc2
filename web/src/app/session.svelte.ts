// What the whole app knows: what is open, whether the program answers, and what was just said.

import * as api from "../api/endpoints";
import { heard } from "../api/send";
import type { App, Changed, Home } from "../wire/api";

export interface Notice {
  words: string;
  /** The change that can be undone at once. */
  entry?: number;
}

const retryMs = 2000;

class Session {
  app: App | undefined = $state.raw();
  home: Home | undefined = $state.raw();
  /** The program does not answer. */
  away = $state(false);
  /** It was stopped from this page, and said so. */
  stopped: string | undefined = $state();
  /** It answers, and this page's key is not its own. */
  locked = $state(false);
  /** Raised when the notebook changed or the program came back: pages ask anew. */
  turn = $state(0);
  notice: Notice | undefined = $state.raw();
  #retry: ReturnType<typeof setTimeout> | undefined;

  async begin(): Promise<void> {
    heard.answered = (status) => this.#answered(status);
    heard.unanswered = () => this.#unanswered();
    this.app = await api.app();
    await this.lookHome();
  }

  /** The trials, and what undo would take back. */
  async lookHome(): Promise<void> {
    this.home = this.app?.notebook ? await api.home() : undefined;
  }

  /** After a change: it is said, can be undone, and pages ask anew. */
  async changed(change: Changed, canUndo = true): Promise<void> {
    const words = [change.what, ...(change.remarks ?? [])].join(" ");
    this.notice = { words, entry: canUndo && change.entry > 0 ? change.entry : undefined };
    this.turn += 1;
    await this.lookHome();
  }

  say(words: string): void {
    this.notice = { words };
  }

  opened(app: App): void {
    this.app = app;
    this.home = undefined;
    this.notice = undefined;
    this.turn += 1;
    void this.lookHome();
  }

  async stop(): Promise<void> {
    this.stopped = (await api.stop()).sentence;
    clearTimeout(this.#retry);
  }

  #answered(status: number): void {
    this.locked = status === 401;
    if (!this.away) return;
    this.away = false;
    this.turn += 1;
  }

  #unanswered(): void {
    if (this.stopped !== undefined) return;
    this.away = true;
    clearTimeout(this.#retry);
    this.#retry = setTimeout(() => {
      api.app().then(
        (app) => {
          this.app = app;
          return this.lookHome();
        },
        () => {},
      );
    }, retryMs);
  }
}

export const session = new Session();
