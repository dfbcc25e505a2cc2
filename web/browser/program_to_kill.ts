// The program, started in a folder of its own, killed without warning and started again there.

import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { App } from "../src/wire/api";
import { program } from "./opened";

export class ProgramToKill {
  readonly folder = mkdtempSync(join(tmpdir(), "keenfall-killed-"));
  /** What it printed since it was started last. */
  said = "";
  notebook: string | undefined;
  #child: ChildProcess | undefined;
  #address = "";

  /** `until`: of its words, the last that is waited for. */
  async start(words: string[] = [], until = /http:\S+#key=\S+/): Promise<void> {
    const env = { ...process.env, XDG_STATE_HOME: join(this.folder, "state") };
    const begun = spawn(program, ["open", "--no-open", ...words], { cwd: this.folder, env });
    this.#child = begun;
    this.said = "";
    await new Promise<void>((found, failed) => {
      begun.stdout?.on("data", (text) => {
        this.said += String(text);
        if (until.test(this.said)) found();
      });
      begun.on("exit", () => failed(new Error(`keenfall open ended: ${this.said}`)));
    });
    this.#address = /http:\S+#key=\S+/.exec(this.said)?.[0] ?? "";
    this.notebook = (await this.ask<App>("GET", "/app")).notebook?.id;
  }

  async kill(): Promise<void> {
    const dying = this.#child;
    const gone = new Promise((done) => dying?.on("exit", done));
    dying?.kill("SIGKILL");
    await gone;
  }

  async ask<T>(method: string, path: string, body?: unknown): Promise<T> {
    const { origin, hash } = new URL(this.#address);
    const answer = await fetch(`${origin}/api/v1${path}`, {
      method,
      headers: {
        "content-type": "application/json",
        "x-keenfall-key": hash.replace("#key=", ""),
        ...(this.notebook && { "x-keenfall-notebook": this.notebook }),
      },
      body: body === undefined ? undefined : JSON.stringify(body),
    });
    if (!answer.ok) throw new Error(`${method} ${path}: ${await answer.text()}`);
    return answer.json() as Promise<T>;
  }

  leave(): void {
    this.#child?.kill("SIGKILL");
    rmSync(this.folder, { recursive: true, force: true });
  }
}
