// The report that tests are made with keeps the schema that the program's own reports keep.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv } from "ajv";
import { describe, expect, test } from "vitest";
import { type Made, madeReport } from "./made_report";

const schema = (name: string) =>
  JSON.parse(readFileSync(join(process.cwd(), "../docs/wire", `${name}.schema.json`), "utf8"));

const ajv = new Ajv({ strict: false, allErrors: true });
ajv.addSchema(schema("judgement"), "judgement.schema.json");
const keeps = ajv.compile(schema("report"));

const faultsOf = (report: unknown) =>
  keeps(report)
    ? []
    : (keeps.errors ?? []).map((fault) => `${fault.instancePath} ${fault.message}`);

describe("the made report", () => {
  test.each<[string, Made]>([
    ["two edges", {}],
    ["two media", { media: ["new matting", "uplifted matting"] }],
    ["edges stopped early", { halfKeenness: 5000 }],
  ])("of %s keeps the schema", (_what, made) => {
    expect(faultsOf(JSON.parse(JSON.stringify(madeReport(made))))).toEqual([]);
  });

  test("is held against a schema that refuses", () => {
    expect(faultsOf({ ...madeReport(), title: 3 })).not.toEqual([]);
  });
});
