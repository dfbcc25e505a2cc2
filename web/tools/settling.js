// A Vite plugin: puts what was built where the program takes it from. Files that came out as they were
// keep their times, so that nothing is linked anew; files that are made no more are gone.
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
} from "node:fs";
import { dirname, join } from "node:path";

const filesIn = (folder) =>
  readdirSync(folder, { recursive: true }).filter((name) => statSync(join(folder, name)).isFile());

export function settling(folder) {
  return {
    name: "keenfall-settling",
    writeBundle({ dir }) {
      mkdirSync(folder, { recursive: true });
      const made = filesIn(dir);
      for (const name of filesIn(folder)) if (!made.includes(name)) rmSync(join(folder, name));
      for (const name of made) {
        const [from, to] = [join(dir, name), join(folder, name)];
        if (existsSync(to) && readFileSync(from).equals(readFileSync(to))) continue;
        mkdirSync(dirname(to), { recursive: true });
        cpSync(from, to);
      }
    },
  };
}
