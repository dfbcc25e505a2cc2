// Every request goes through here: it carries the key, and what is not a success becomes one of two
// failures that a page can show.

import type { Problem } from "../wire/api";
import { heldKey } from "./key";
import { keptToldIn, toldInHeader } from "./told_in";

/** The program answered that it will not, and why. */
export class Refused extends Error {
  readonly status: number;
  readonly problems: Problem[];

  constructor(status: number, problems: Problem[]) {
    super(problems.map(({ sentence }) => sentence).join(" "));
    this.status = status;
    this.problems = problems;
  }
}

/** Nobody answered: the program was stopped, or is not reachable for the moment. */
export class Unanswered extends Error {}

export interface Sending {
  method?: "GET" | "POST" | "PUT" | "DELETE";
  body?: unknown;
  signal?: AbortSignal;
  /** Another than the one the page is about. */
  notebook?: string;
}

/** Told after every request; a page sets what it does with that. */
export const heard = {
  answered: (_status: number): void => {},
  /** Another notebook is open than the page is about. */
  another: (_sentence: string): void => {},
  unanswered: (): void => {},
};

/** Which notebook the page is about: every request says so, that none reaches another. */
export const meant: { notebook?: string } = {};

const keyHeader = "X-Keenfall-Key";
const notebookHeader = "X-Keenfall-Notebook";

async function problemsIn(answer: Response): Promise<Problem[]> {
  const body: unknown = await answer.json().catch(() => undefined);
  const problems = (body as { problems?: Problem[] } | undefined)?.problems;
  if (problems?.length) return problems;
  const sentence = `Keenfall refused this without a reason (${answer.status}).`;
  return [{ kind: "failed", sentence }];
}

/** The answer to a request; throws Refused, Unanswered, or the signal's own AbortError. */
export async function answerTo(path: string, how: Sending = {}): Promise<Response> {
  const { method = "GET", body, signal, notebook = meant.notebook } = how;
  const headers: Record<string, string> = {
    [keyHeader]: heldKey(localStorage),
    ...toldInHeader(keptToldIn(localStorage)),
  };
  if (notebook !== undefined) headers[notebookHeader] = notebook;
  if (body !== undefined) headers["Content-Type"] = "application/json";
  const sent = body === undefined ? undefined : JSON.stringify(body);
  let answer: Response;
  try {
    answer = await fetch(path, { method, headers, body: sent, signal });
  } catch (failure) {
    const isTooLate = signal?.aborted && (signal.reason as Error)?.name === "TimeoutError";
    if (signal?.aborted && !isTooLate) throw failure;
    heard.unanswered();
    throw new Unanswered("Keenfall does not answer.");
  }
  heard.answered(answer.status);
  if (answer.ok) return answer;
  const problems = await problemsIn(answer);
  const another = problems.find(({ kind }) => kind === "another_notebook");
  if (another) heard.another(another.sentence);
  throw new Refused(answer.status, problems);
}

export async function send<T>(path: string, how: Sending = {}): Promise<T> {
  return (await answerTo(path, how)).json();
}
