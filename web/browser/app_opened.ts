// The app served by the program itself, in an empty folder, and a person in front of it.

import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { expect } from "vitest";
import type { App } from "../src/wire/api";
import { sideways, tooSmall } from "./measured";
import { program } from "./opened";

export interface ServedApp {
  /** With its key. */
  address: string;
  folder: string;
  /** Whether the program ended as it should. */
  stop: () => Promise<boolean>;
}

function addressIn(child: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let said = "";
    const look = (text: Buffer) => {
      said += text.toString();
      const address = /http:\S+#key=\S+/.exec(said);
      if (address) found(address[0]);
    };
    child.stdout?.on("data", look);
    child.stderr?.on("data", look);
    child.on("exit", () => failed(new Error(`keenfall open ended: ${said}`)));
  });
}

export async function serveApp(...words: string[]): Promise<ServedApp> {
  const folder = mkdtempSync(join(tmpdir(), "keenfall-app-"));
  const env = { ...process.env, XDG_STATE_HOME: join(folder, "state") };
  const child = spawn(program, ["open", "--no-open", ...words], { cwd: folder, env });
  const ended = new Promise<number | null>((done) => child.on("exit", done));
  const address = await addressIn(child);
  const stop = async () => {
    child.kill("SIGTERM");
    const code = await ended;
    rmSync(folder, { recursive: true, force: true });
    return code === 0;
  };
  return { address, folder, stop };
}

/** What its API answers, asked as the pages ask: of the notebook that is open. */
export async function askApi<T>(
  { address }: ServedApp,
  method: string,
  path: string,
  body: unknown = {},
): Promise<T> {
  const { origin, hash } = new URL(address);
  const key = { "x-keenfall-key": hash.replace("#key=", "") };
  const open = await fetch(`${origin}/api/v1/app`, { headers: key });
  const { notebook } = (await open.json()) as App;
  const answer = await fetch(`${origin}/api/v1${path}`, {
    method,
    headers: {
      "content-type": "application/json",
      ...key,
      ...(notebook?.id && { "x-keenfall-notebook": notebook.id }),
    },
    body: method === "GET" ? undefined : JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(`${method} ${path}: ${await answer.text()}`);
  return answer.json() as Promise<T>;
}

export const desktop = { width: 1280, height: 800 };
export const phone = { width: 360, height: 740 };

export interface Person {
  page: Page;
  /** Errors and refusals of the content policy, as the console has them. */
  complaints: string[];
}

export async function sitDown(
  browser: Browser,
  address: string,
  size = desktop,
  dark = false,
): Promise<Person> {
  const context = await browser.newContext({
    viewport: size,
    colorScheme: dark ? "dark" : "light",
    acceptDownloads: true,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.goto(address);
  return { page, complaints };
}

export const headline = (page: Page) => page.locator(".headline").first();
export const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
export const inMargin = (page: Page, name: string | RegExp) =>
  page.locator("header").getByRole("link", { name });

/** Goes on by Tab until what is named has the focus. */
export async function tabTo(page: Page, role: string, name: RegExp): Promise<void> {
  for (let pressed = 0; pressed < 60; pressed++) {
    await page.keyboard.press("Tab");
    const here = await page.evaluate(() => {
      const element = document.activeElement;
      const label =
        element?.getAttribute("aria-label") ?? (element as HTMLInputElement)?.labels?.[0];
      const words =
        typeof label === "string" ? label : (label?.textContent ?? element?.textContent);
      return { tag: element?.tagName.toLowerCase(), words: words?.trim() ?? "" };
    });
    if (here.tag === role && name.test(here.words)) return;
  }
  throw new Error(`Tab does not come to ${role} ${name}`);
}

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Where each page that is looked at is photographed; unset: nowhere. */
const pictures = process.env.KEENFALL_PICTURES;
let taken = 0;

async function photograph(page: Page, scheme: string): Promise<void> {
  if (!pictures) return;
  taken += 1;
  const { pathname } = new URL(page.url());
  const screen = pathname.split("/").at(-1) || "trials";
  const test = (expect.getState().currentTestName ?? "").replace(/[^\w]+/g, "-").slice(0, 60);
  const width = page.viewportSize()?.width ?? 0;
  const name = `${test}-${String(taken).padStart(3, "0")}-${screen}-${width}-${scheme}.png`;
  await page.screenshot({ path: join(pictures, name), fullPage: true });
}

/**
 * What bars somebody from the page as it stands, in light and in dark; what is too small to be hit; and
 * whether it is wider than its window.
 */
export async function faults(page: Page): Promise<string[]> {
  const found: string[] = [];
  await page.evaluate(axe);
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    const here = await page.evaluate(async () => {
      const checker = (globalThis as unknown as { axe: typeof import("axe-core") }).axe;
      const { violations } = await checker.run({ exclude: [["figure svg"]] });
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`);
    });
    found.push(...here.map((fault) => `${colorScheme}: ${fault}`));
    await photograph(page, colorScheme);
  }
  await page.emulateMedia({ colorScheme: null });
  return [...found, ...(await tooSmall(page)), ...(await sideways(page))];
}
