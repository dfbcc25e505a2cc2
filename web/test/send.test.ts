import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { heldKey, takeKey } from "../src/api/key";
import { heard, meant, Refused, send, Unanswered } from "../src/api/send";
import { keepToldIn, keptToldIn, toldInHeader } from "../src/api/told_in";

const answered = (status: number, body: unknown) =>
  vi.fn<typeof fetch>(async () => new Response(JSON.stringify(body), { status }));

beforeEach(() => {
  localStorage.clear();
  localStorage.setItem("keenfall.key", "secret");
  heard.answered = vi.fn();
  heard.another = vi.fn();
  heard.unanswered = vi.fn();
});
afterEach(() => vi.unstubAllGlobals());

describe("a request", () => {
  test("carries the key in its header and its body as JSON", async () => {
    const fetched = answered(200, { name: "bench" });
    vi.stubGlobal("fetch", fetched);

    const got = await send<{ name: string }>("/api/v1/home", { method: "POST", body: { a: 1 } });

    const [path, how] = fetched.mock.calls[0] ?? [];
    expect(got).toEqual({ name: "bench" });
    expect(path).toBe("/api/v1/home");
    expect(how).toMatchObject({
      method: "POST",
      body: '{"a":1}',
      headers: { "X-Keenfall-Key": "secret", "Content-Type": "application/json" },
    });
    expect(heard.answered).toHaveBeenCalledWith(200);
  });

  test("that is refused throws what the program says", async () => {
    const problems = [{ kind: "bad_value", sentence: "A margin is above 1.", accepted: "1.5" }];
    vi.stubGlobal("fetch", answered(400, { problems }));

    const failure = await send("/api/v1/home").catch((caught: unknown) => caught);

    expect(failure).toBeInstanceOf(Refused);
    expect(failure).toMatchObject({ status: 400, problems, message: "A margin is above 1." });
  });

  test("that is refused without a reason says so with its number", async () => {
    vi.stubGlobal("fetch", async () => new Response("<html>", { status: 502 }));

    const failure = await send("/api/v1/home").catch((caught: unknown) => caught);

    expect(failure).toBeInstanceOf(Refused);
    expect((failure as Refused).problems[0]?.sentence).toContain("(502)");
  });

  test("that nobody answers is told apart from one that is refused", async () => {
    vi.stubGlobal("fetch", () => Promise.reject(new TypeError("failed to fetch")));

    await expect(send("/api/v1/home")).rejects.toBeInstanceOf(Unanswered);
    expect(heard.unanswered).toHaveBeenCalledOnce();
  });

  test("that was stopped does not mean that nobody answers", async () => {
    const stop = new AbortController();
    stop.abort();
    vi.stubGlobal("fetch", () => Promise.reject(stop.signal.reason));

    const failure = await send("/x", { signal: stop.signal }).catch((caught: unknown) => caught);

    expect(failure).toMatchObject({ name: "AbortError" });
    expect(heard.unanswered).not.toHaveBeenCalled();
  });
});

describe("the notebook that is meant", () => {
  afterEach(() => {
    meant.notebook = undefined;
  });
  const headersOf = (fetched: ReturnType<typeof answered>) => fetched.mock.calls[0]?.[1]?.headers;

  test("is said with every request once it is known", async () => {
    const fetched = answered(200, {});
    vi.stubGlobal("fetch", fetched);

    await send("/api/v1/app");
    expect(headersOf(fetched)).not.toHaveProperty("X-Keenfall-Notebook");

    fetched.mockClear();
    meant.notebook = "0123";
    await send("/api/v1/kit/blades", { method: "POST", body: {} });
    expect(headersOf(fetched)).toMatchObject({ "X-Keenfall-Notebook": "0123" });
  });

  test("is told apart from other refusals where another is open", async () => {
    const sentence = "Another notebook is open in Keenfall now, second.keen.";
    vi.stubGlobal("fetch", answered(409, { problems: [{ kind: "another_notebook", sentence }] }));
    await expect(send("/api/v1/home")).rejects.toBeInstanceOf(Refused);
    expect(heard.another).toHaveBeenCalledWith(sentence);

    vi.mocked(heard.another).mockClear();
    vi.stubGlobal("fetch", answered(409, { problems: [{ kind: "conflicting", sentence: "No." }] }));
    await expect(send("/api/v1/home")).rejects.toBeInstanceOf(Refused);
    expect(heard.another).not.toHaveBeenCalled();
  });
});

describe("the key", () => {
  const replaced = { state: null, replaceState: vi.fn() } as unknown as History;

  test("is taken out of the address and kept", () => {
    const here = { hash: "#key=abc%2Bd", pathname: "/kit", search: "?a=1" } as Location;

    takeKey(here, replaced, localStorage);

    expect(heldKey(localStorage)).toBe("abc+d");
    expect(replaced.replaceState).toHaveBeenCalledWith(null, "", "/kit?a=1");
  });

  test("that is kept stays where the address holds none", () => {
    takeKey({ hash: "#page", pathname: "/", search: "" } as Location, replaced, localStorage);

    expect(heldKey(localStorage)).toBe("secret");
  });
});

describe("what things are told in", () => {
  test("is said with every request once it is chosen", async () => {
    keepToldIn(localStorage, { force: "N", length: "in" });
    const fetched = answered(200, {});
    vi.stubGlobal("fetch", fetched);

    await send("/api/v1/home");

    expect(fetched.mock.calls[0]?.[1]?.headers).toMatchObject({ "X-Keenfall-Told-In": "N,in" });
    expect(keptToldIn(localStorage)).toEqual({ force: "N", length: "in" });
  });

  test("is not said where all is told as recorded", () => {
    keepToldIn(localStorage, { length: "in" });
    expect(toldInHeader(keptToldIn(localStorage))).toEqual({ "X-Keenfall-Told-In": "in" });

    keepToldIn(localStorage, {});
    expect(toldInHeader(keptToldIn(localStorage))).toEqual({});
  });
});
