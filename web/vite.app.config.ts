// Builds the pages of the app into build/web/app: files with names of their content, packed into
// app.pack for the program to hold.
import { fileURLToPath } from "node:url";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";
import { packing } from "./tools/packing.js";

const built = (name: string) => fileURLToPath(new URL(`../build/web/${name}`, import.meta.url));

const page = (name: string) => fileURLToPath(new URL(`src/app/${name}`, import.meta.url));

export default defineConfig({
  root: "src/app",
  plugins: [svelte({ configFile: "../../svelte.config.js" }), packing(built("app.pack"))],
  build: {
    outDir: built("app"),
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rollupOptions: { input: { index: page("index.html"), bench: page("bench.html") } },
  },
});
