// A report written by the program and opened in Debian's Chromium, as a person opens it from a disk.

import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";

const root = fileURLToPath(new URL("../../", import.meta.url));

export const program = process.env.KEENFALL_PROGRAM ?? join(root, "build/release/keenfall");

/** What the program prints. */
export function keenfall(...words: string[]): string {
  return execFileSync(program, words, { encoding: "utf8", maxBuffer: 1 << 28, stdio: "pipe" });
}

/** A folder that is gone when the tests are. */
export function scratch(): { file: (name: string) => string; gone: () => void } {
  const folder = mkdtempSync(join(tmpdir(), "keenfall-pages-"));
  return {
    file: (name) => join(folder, name),
    gone: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** A table of readings, written where `file` says. */
export function writeTable(file: string, rows: string[][]): string {
  const cell = (text: string) => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  writeFileSync(file, rows.map((row) => `${row.map(cell).join(",")}\n`).join(""));
  return file;
}

export function examples(name: string): string {
  return join(root, "examples", name);
}

export function chromiumPath(): string {
  const path = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find(existsSync);
  if (!path) throw new Error("Chromium is not here: apt-get install chromium");
  return path;
}

export function startBrowser(args: string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: chromiumPath(), args: ["--no-sandbox", ...args] });
}

export interface Opened {
  page: Page;
  /** Errors and refusals of the content policy, as the console has them. */
  complaints: string[];
  /** Addresses it asked for besides its own file. */
  fetched: string[];
}

export interface Way {
  width?: number;
  height?: number;
  dark?: boolean;
  script?: boolean;
  bypassPolicy?: boolean;
}

export async function open(browser: Browser, file: string, way: Way = {}): Promise<Opened> {
  const { width = 1000, height = 900, dark = false, script = true, bypassPolicy = false } = way;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? "dark" : "light",
    javaScriptEnabled: script,
    bypassCSP: bypassPolicy,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  const fetched: string[] = [];
  const address = pathToFileURL(file).href;
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("dialog", (dialog) => {
    complaints.push(`a dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on("request", (request) => {
    if (request.url() !== address) fetched.push(request.url());
  });
  await page.goto(address);
  return { page, complaints, fetched };
}

/** Figures of a page, and how many of them have their picture drawn. */
export async function shown(page: Page): Promise<{ figures: number; pictures: number }> {
  return page.evaluate(() => ({
    figures: document.querySelectorAll("figure[data-figure]").length,
    pictures: [...document.querySelectorAll("figure[data-figure]")].filter((figure) => {
      const picture = figure.querySelector(".picture:not([hidden]) svg[role=img]");
      return picture !== null && picture.getBoundingClientRect().height > 50;
    }).length,
  }));
}
