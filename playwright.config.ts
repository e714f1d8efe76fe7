import { existsSync } from "node:fs";
import { defineConfig } from "@playwright/test";

const SYSTEM_CHROMIUM = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);
const PORT = Number(process.env.LOUPEWORK_E2E_PORT ?? 4273);

export default defineConfig({
  testDir: "tests/e2e",
  outputDir: "test-results",
  fullyParallel: false,
  workers: 1,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  reporter: [["list"], ["json", { outputFile: "test-results/browser.json" }]],
  use: {
    baseURL: `http://127.0.0.1:${PORT}`,
    viewport: { width: 1440, height: 900 },
    browserName: "chromium",
    trace: "retain-on-failure",
    launchOptions: {
      ...(SYSTEM_CHROMIUM === undefined ? {} : { executablePath: SYSTEM_CHROMIUM }),
      // Chromium's own sandbox refuses to run as root.
      chromiumSandbox: process.getuid?.() !== 0,
      args: [
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
  webServer: {
    command: "node tests/support/serve-for-browser.mjs",
    url: `http://127.0.0.1:${PORT}/sign-in`,
    timeout: 180_000,
    reuseExistingServer: process.env.LOUPEWORK_E2E_REUSE === "1",
    env: { PORT: String(PORT) },
    gracefulShutdown: { signal: "SIGTERM", timeout: 5000 },
  },
});
