import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      { find: "server-only", replacement: here("./tests/support/empty-module.ts") },
      { find: /^@\//, replacement: here("./") },
    ],
  },
  test: {
    testTimeout: 30_000,
    hookTimeout: 60_000,
    // All cores: vitest keeps one for itself, and of two that is half.
    maxWorkers: "100%",
    projects: [
      {
        extends: true,
        test: {
          name: "pure",
          include: ["tests/{unit,property,golden,architecture}/**/*.test.ts"],
          // Nothing here keeps a state that another file could meet, and loading the engine anew for each costs more than the tests.
          isolate: false,
        },
      },
      {
        extends: true,
        test: { name: "school", include: ["tests/{access,integration}/**/*.test.ts"] },
      },
    ],
  },
});
