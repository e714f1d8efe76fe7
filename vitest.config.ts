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
    include: ["tests/{unit,property,golden,access,integration,architecture}/**/*.test.ts"],
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
