// Two kinds of tests: of the functions, and of whole pages in a browser.
import { defineConfig } from "vitest/config";
import build from "./vite.config.ts";

export default defineConfig({
  plugins: build.plugins,
  test: {
    projects: [
      {
        extends: true,
        resolve: { conditions: ["browser"] },
        test: { name: "unit", include: ["test/**/*.test.ts"], environment: "jsdom" },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["browser/**/*.test.ts"],
          environment: "node",
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // A second is not enough for an answer on a busy machine.
          expect: { poll: { timeout: 60_000 } },
          fileParallelism: false,
        },
      },
    ],
  },
});
