// Builds the pages of the app into build/web/app: files with names of their content, which the program
// holds.
import { fileURLToPath } from "node:url";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";
import { settling } from "./tools/settling.js";

const built = (name: string) => fileURLToPath(new URL(`../build/web/${name}`, import.meta.url));

export default defineConfig({
  root: "src/app",
  plugins: [svelte({ configFile: "../../svelte.config.js" }), settling(built("app"))],
  build: {
    outDir: built("made_app"),
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
