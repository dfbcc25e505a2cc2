// Writes the TypeScript types of everything that the program puts into JSON for a page, from the
// schemas in docs/wire. They are made anew with each build and are not kept in the repository.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { compile } from "json-schema-to-typescript";

const web = dirname(dirname(fileURLToPath(import.meta.url)));
const schemas = join(web, "..", "docs", "wire");
const made = join(web, "src", "wire");

const read = (file) => JSON.parse(readFileSync(join(schemas, file), "utf8"));
const from = (file) => `// Made from docs/wire/${file}. Change that file instead.`;

async function write(name, type, schema, banner) {
  const types = await compile({ ...schema, title: type }, type, {
    cwd: schemas,
    additionalProperties: false,
    bannerComment: banner,
  });
  writeFileSync(join(made, `${name}.ts`), types);
}

/** What the API's description takes from the report's schema has its types there already. */
function withReportTypes(schema) {
  if (Array.isArray(schema)) return schema.map(withReportTypes);
  if (schema === null || typeof schema !== "object") return schema;
  const reference = schema.$ref ?? "";
  if (reference.startsWith("report.schema.json")) {
    const part = reference.split("#/definitions/")[1];
    return { tsType: part ? `Report[${JSON.stringify(part)}]` : "Report" };
  }
  return Object.fromEntries(Object.entries(schema).map(([key, of]) => [key, withReportTypes(of)]));
}

mkdirSync(made, { recursive: true });
await write("report", "Report", read("report.schema.json"), from("report.schema.json"));

const { schemas: parts } = withReportTypes(read("api.json").components);
const all = {
  type: "object",
  additionalProperties: false,
  properties: Object.fromEntries(
    Object.keys(parts).map((name) => [name, { $ref: `#/components/schemas/${name}` }]),
  ),
  components: { schemas: parts },
};
await write("api", "Api", all, `${from("api.json")}\nimport type { Report } from "./report";`);
