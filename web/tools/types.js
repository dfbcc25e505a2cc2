// Writes the TypeScript types of everything that the program puts into JSON for a page, from the
// schemas in docs/wire. They are made anew with each build and are not kept in the repository.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { compile } from "json-schema-to-typescript";

const web = dirname(dirname(fileURLToPath(import.meta.url)));
const schemas = join(web, "..", "docs", "wire");
const made = join(web, "src", "wire");

mkdirSync(made, { recursive: true });
for (const [name, type] of [["report", "Report"]]) {
  const file = `${name}.schema.json`;
  const schema = JSON.parse(readFileSync(join(schemas, file), "utf8"));
  const types = await compile({ ...schema, title: type }, type, {
    cwd: schemas,
    additionalProperties: false,
    bannerComment: `// Made from docs/wire/${file}. Change that file instead.`,
  });
  writeFileSync(join(made, `${name}.ts`), types);
}
