// Builds the script and the style of the report: one file each, with names that do not change,
// since the program holds them.
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";
import { embedding } from "./tools/embedding.js";

export default defineConfig({
  plugins: [svelte(), embedding()],
  build: {
    outDir: "../build/web/made",
    emptyOutDir: true,
    target: "es2022",
    lib: { entry: "src/report/main.ts", formats: ["iife"], name: "keenfallReport" },
    rollupOptions: {
      output: { entryFileNames: "report.js", assetFileNames: "report[extname]" },
    },
  },
});
