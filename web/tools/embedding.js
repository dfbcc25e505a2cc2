// A Vite plugin: what the program needs to put the script into a page. The page's content policy
// names the script by its hash, and nothing in it may end the element that holds it.
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

export function embedding() {
  return {
    name: "keenfall-embedding",
    writeBundle({ dir }) {
      const file = join(dir, "report.js");
      const script = readFileSync(file);
      if (/<\/?script/i.test(script.toString())) this.error("the script would end its own element");
      writeFileSync(`${file}.sha256`, createHash("sha256").update(script).digest("base64"));
    },
  };
}
