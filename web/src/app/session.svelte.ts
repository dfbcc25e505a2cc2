// What the whole app knows: what is open, whether the program answers, and what was just said.

import * as api from "../api/endpoints";
import { heard, meant } from "../api/send";
import type { App, Changed, Home } from "../wire/api";
import { place } from "./place.svelte";

export interface Notice {
  words: string;
  /** The change that can be undone at once. */
  entry?: number;
}

const retryMs = 2000;

class Session {
  #app: App | undefined = $state.raw();
  home: Home | undefined = $state.raw();
  /** The program does not answer. */
  away = $state(false);
  /** Another notebook than this page's is open now: what the program said of it. */
  elsewhere: string | undefined = $state();
  /** It was stopped from this page, and said so. */
  stopped: string | undefined = $state();
  /** It answers, and this page's key is not its own. */
  locked = $state(false);
  /** Raised when the notebook changed or the program came back: pages ask anew. */
  turn = $state(0);
  notice: Notice | undefined = $state.raw();
  #retry: ReturnType<typeof setTimeout> | undefined;

  /** What is open, as far as this page is about it. */
  get app(): App | undefined {
    return this.#app;
  }

  async begin(): Promise<void> {
    heard.answered = (status) => this.#answered(status);
    heard.another = (sentence) => {
      this.elsewhere = sentence;
    };
    heard.unanswered = () => this.#unanswered();
    this.#isAbout(await api.app());
    await this.lookHome();
  }

  /** The trials, and what undo would take back. */
  async lookHome(): Promise<void> {
    this.home = this.app?.notebook ? await api.home() : undefined;
  }

  /** After a change: it is said, can be undone, and pages ask anew. */
  async changed(change: Changed, canUndo = true): Promise<void> {
    const remarks = change.remarks ?? [];
    const words = [`Done: ${change.what}${remarks.length > 0 ? "." : ""}`, ...remarks].join(" ");
    this.notice = { words, entry: canUndo && change.entry > 0 ? change.entry : undefined };
    this.turn += 1;
    await this.lookHome();
  }

  say(words: string): void {
    this.notice = { words };
  }

  opened(app: App): void {
    this.#isAbout(app);
    this.elsewhere = undefined;
    this.home = undefined;
    this.notice = undefined;
    this.turn += 1;
    // That nobody answers is said once, for the whole page.
    this.lookHome().catch(() => {});
  }

  /** Leaves what this page was about for what is open. */
  async lookAtOpen(): Promise<void> {
    this.opened(await api.app());
    place.go("/");
  }

  /** What this page is about is opened again; what stands on the page stays. */
  async openAgain(): Promise<void> {
    const path = this.app?.notebook?.path;
    if (path === undefined) return;
    this.#isAbout(await api.openNotebook({ how: "open", path }));
    this.elsewhere = undefined;
    this.turn += 1;
    await this.lookHome();
  }

  async stop(): Promise<void> {
    this.stopped = (await api.stop()).sentence;
    clearTimeout(this.#retry);
  }

  #isAbout(app: App): void {
    this.#app = app;
    meant.notebook = app.notebook?.id;
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
      void this.#askAgain().catch(() => {});
    }, retryMs);
  }

  /** Another notebook may be open by now: this page is about its own until somebody says otherwise. */
  async #askAgain(): Promise<void> {
    const app = await api.app();
    if (!this.app?.notebook || app.notebook?.id === this.app.notebook.id) this.#isAbout(app);
    await this.lookHome();
  }
}

export const session = new Session();
