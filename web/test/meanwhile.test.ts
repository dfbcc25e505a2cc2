// What is typed or asked while an answer is under way.
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { EnteringTable } from "../src/app/entering.svelte";
import { withText } from "../src/app/grid/sheet";
import { TrialJudging } from "../src/app/judging.svelte";
import { Drafting } from "../src/app/planning/drafting.svelte";
import { unsent } from "../src/app/unsent";
import type { Trial } from "../src/wire/api";

interface Asked {
  method: string;
  path: string;
  answer: (body: unknown, status?: number) => void;
}

/** The program, which answers when it is told to. */
let asked: Asked[] = [];
const settled = () => new Promise((done) => setTimeout(done, 0));
const waitingFor = (method: string, path: RegExp) =>
  vi.waitFor(() => {
    const at = asked.findIndex((one) => one.method === method && path.test(one.path));
    if (at < 0) throw new Error(`${method} ${path} is not asked; ${JSON.stringify(asked)}`);
    return asked.splice(at, 1)[0] as Asked;
  });

beforeEach(() => {
  localStorage.clear();
  sessionStorage.clear();
  asked = [];
  vi.stubGlobal(
    "fetch",
    (path: string, { method }: RequestInit) =>
      new Promise<Response>((done) => {
        const answer = (body: unknown, status = 200) =>
          done(new Response(JSON.stringify(body), { status }));
        asked.push({ method: method ?? "GET", path, answer });
      }),
  );
});
afterEach(() => vi.unstubAllGlobals());

const recorded = { counted: "cuts", series: [], runs: [] };
const trial = { uid: "t", name: "rope", recorded } as unknown as Trial;

describe("a table that is being taken in", () => {
  const sheetOf = (table: EnteringTable) => table.sheet.map((row) => row.join("|")).join("\n");

  async function taking(table: EnteringTable) {
    const taken = table.take("rope", false);
    const request = await waitingFor("POST", /tables\/take/);
    return { taken, answer: () => request.answer({ trial: "t" }) };
  }

  test("is forgotten once it is in", async () => {
    const table = new EnteringTable("notebook");
    table.change(withText(table.sheet, { row: 1, column: 1 }, "104"));
    const { taken, answer } = await taking(table);
    answer();
    await taken;

    expect(sheetOf(table)).not.toContain("104");
    expect(unsent(localStorage, "table.notebook.new")).toBeUndefined();
    table.leave();
  });

  test("keeps what was typed meanwhile", async () => {
    const table = new EnteringTable("notebook");
    table.change(withText(table.sheet, { row: 1, column: 1 }, "104"));
    const { taken, answer } = await taking(table);
    table.change(withText(table.sheet, { row: 2, column: 1 }, "219"));
    answer();
    await taken;

    expect(sheetOf(table)).toContain("219");
    expect(JSON.stringify(unsent(localStorage, "table.notebook.new"))).toContain("219");
    table.leave();
  });
});

describe("a large table", () => {
  const begun = { work: { id: "w", state: "running", words: "reading the table", fraction: 0 } };
  const done = { ...begun.work, state: "done", result: "/api/v1/works/w/result" };

  test("is read by work, and what that makes is the answer", async () => {
    const table = new EnteringTable("notebook");
    const read = table.read();
    (await waitingFor("POST", /tables\/read/)).answer(begun, 202);
    await vi.waitFor(() => expect(table.readingWork.running).toBe(true));
    (await waitingFor("GET", /works\/w$/)).answer(done);
    (await waitingFor("GET", /works\/w\/result/)).answer({ grids: [] });
    await read;

    expect(table.reading.answer).toEqual({ grids: [] });
    table.leave();
  });

  test.each([
    ["another choice is made", (table: EnteringTable) => table.choose({})],
    ["its page is left", (table: EnteringTable) => table.leave()],
  ])("is not read on once %s", async (_when, happens) => {
    const table = new EnteringTable("notebook");
    void table.read();
    (await waitingFor("POST", /tables\/read/)).answer(begun, 202);
    await vi.waitFor(() => expect(table.readingWork.running).toBe(true));
    happens(table);

    await waitingFor("DELETE", /works\/w/);
    table.leave();
  });

  test("says that it was stopped where somebody stops it", async () => {
    const table = new EnteringTable("notebook");
    const read = table.read();
    (await waitingFor("POST", /tables\/read/)).answer(begun, 202);
    await vi.waitFor(() => expect(table.readingWork.running).toBe(true));
    void table.readingWork.stop();
    await read;

    expect(table.reading.problems[0]?.kind).toBe("interrupted");
    expect(table.reading.pending).toBe(false);
  });
});

describe("a draft that is being kept", () => {
  const saying = (words: string) => ({ claims: [{ words, worth_it_margin: 1.5 }] });

  async function saved(drafting: Drafting, meanwhile: () => void) {
    const saving = drafting.save();
    const request = await waitingFor("PUT", /asked/);
    meanwhile();
    request.answer(trial);
    await saving;
  }

  test("is kept whole where nothing is typed meanwhile", async () => {
    const drafting = new Drafting(trial);
    drafting.change(saying("A outlasts B."));
    await saved(drafting, () => {});

    expect(drafting.unkept).toBe(false);
    expect(unsent(sessionStorage, "asked.t")).toBeUndefined();
  });

  test("stays unkept with what was typed meanwhile", async () => {
    const drafting = new Drafting(trial);
    drafting.change(saying("A outlasts B."));
    await saved(drafting, () => drafting.change(saying("A outlasts B by half.")));

    expect(drafting.unkept).toBe(true);
    expect(JSON.stringify(unsent(sessionStorage, "asked.t"))).toContain("by half");
  });
});

describe("a trial of very many runs that is being judged", () => {
  const work = (id: string, state = "running") => ({
    work: { id, state, words: "judging the trial", fraction: 0.5 },
  });
  const judged = (engine: string) => ({ engine, can_ask_again: true, question: {} });

  test("still gets its full answer where the margin is moved meanwhile", async () => {
    const judging = new TrialJudging("t");
    void judging.workOut();
    (await waitingFor("POST", /judgements/)).answer(work("full"), 202);
    judging.ask({ worth_it_margin: 2 });
    (await waitingFor("POST", /judgements/)).answer(work("quick"), 202);
    await vi.waitFor(() => expect(judging.looking.running).toBe(true));

    expect(judging.work.running).toBe(true);
    expect(judging.work.now?.id).toBe("full");
    judging.leave();
    await waitingFor("DELETE", /works\/full/);
    await waitingFor("DELETE", /works\/quick/);
  });

  test("is not worked out for a page that was left before the work began", async () => {
    const judging = new TrialJudging("t");
    void judging.workOut();
    const request = await waitingFor("POST", /judgements/);
    judging.leave();
    request.answer(work("full"), 202);

    await waitingFor("DELETE", /works\/full/);
    expect(judging.work.running).toBe(false);
  });

  test("answers at once where it is quick", async () => {
    const judging = new TrialJudging("t");
    judging.ask({});
    (await waitingFor("POST", /judgements/)).answer(judged("quick"));
    await vi.waitFor(() => expect(judging.judged?.engine).toBe("quick"));
    await settled();
    expect(judging.pending).toBe(false);
  });
});
