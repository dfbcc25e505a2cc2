// A Vite plugin: packs the built pages into one file that the program holds. For each file a line
// (path, type, tag, bytes, bytes when compressed), an empty line, then the bytes of all, each whole
// and then compressed. A pack that comes out as it was keeps its time, so that nothing is linked anew.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { extname, join } from "node:path";
import { gzipSync } from "node:zlib";

const types = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
};

function filesIn(folder, path = "") {
  return readdirSync(join(folder, path), { withFileTypes: true }).flatMap((entry) => {
    const inside = `${path}/${entry.name}`;
    return entry.isDirectory() ? filesIn(folder, inside) : [inside];
  });
}

export function packed(folder) {
  const lines = [];
  const bytes = [];
  for (const path of filesIn(folder).sort()) {
    const type = types[extname(path)];
    if (type === undefined) throw new Error(`no type is known for ${path}`);
    const whole = readFileSync(join(folder, path));
    const compressed = gzipSync(whole, { level: 9 });
    const tag = createHash("sha256").update(whole).digest("base64url").slice(0, 16);
    lines.push([path, type, tag, whole.length, compressed.length].join("\t"));
    bytes.push(whole, compressed);
  }
  return Buffer.concat([Buffer.from(`${lines.join("\n")}\n\n`), ...bytes]);
}

/** file: where to write the pack to. */
export function packing(file) {
  let folder = "";
  return {
    name: "keenfall-packing",
    writeBundle({ dir }) {
      folder = dir;
    },
    closeBundle() {
      const pack = packed(folder);
      const isAsItWas = existsSync(file) && readFileSync(file).equals(pack);
      if (!isAsItWas) writeFileSync(file, pack);
    },
  };
}
