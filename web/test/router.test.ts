import { describe, expect, test } from "vitest";
import { routeOf, searchPath, trialPath } from "../src/app/router";

const uid = "0123456789abcdef0123456789abcdef";

describe("an address", () => {
  test.each([
    ["/", { page: "home" }],
    ["/start", { page: "start" }],
    ["/kit/", { page: "kit" }],
    ["/enter", { page: "enter" }],
    [`/trials/${uid}/plan`, { page: "trial", trial: uid, step: "plan" }],
    [`/trials/${uid}`, { page: "trial", trial: uid, step: "judge" }],
  ])("%s shows its page", (path, route) => {
    expect(routeOf(path)).toEqual(route);
  });

  test.each([
    "/nowhere",
    `/trials/${uid}/dance`,
    `/trials/${uid}/judge/more`,
    "/kit/blades",
    "/trials/%zz/judge",
    "/trials",
  ])("%s leads nowhere and says so", (path) => {
    expect(routeOf(path)).toEqual({ page: "unknown" });
  });

  test("of a trial comes back as the same trial and step, whatever the trial is called by", () => {
    for (const trial of [uid, "a b", "50 %", "ü/?#"]) {
      const path = trialPath(trial, "tell");
      expect(routeOf(path)).toEqual({ page: "trial", trial, step: "tell" });
    }
  });

  test("of a search holds what is looked for", () => {
    const path = new URL(searchPath("10 % & more"), "http://here");
    expect(routeOf(path.pathname, path.search)).toEqual({ page: "search", text: "10 % & more" });
    expect(routeOf("/search")).toEqual({ page: "search", text: "" });
  });
});
