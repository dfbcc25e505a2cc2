// What the program's content policy lets a page do, against what the pages need.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import * as Plot from "@observablehq/plot";
import { expect, test } from "vitest";

const headers = readFileSync(
  join(import.meta.dirname, "../../src/server/strict_headers.cpp"),
  "utf8",
);

test("the policy names the rules that Plot puts into a picture by their hash", () => {
  const rules = Plot.plot({ marks: [] }).querySelector("style")?.textContent ?? "";

  const hash = createHash("sha256").update(rules).digest("base64");

  expect(rules).toContain(":where(.plot-");
  expect(headers).toContain(`'sha256-${hash}'`);
});

test("the policy lets no other script or style stand in a page", () => {
  expect(headers).not.toContain("unsafe-");
});
