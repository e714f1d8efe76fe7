/**
 * The editor at 500 marks in Chromium, on a fresh demo of its own: the production build, served, signed in to as a
 * student who begins a stone. `LOUPEWORK_EDITOR_URL` names another page that shows the editor at once.
 */
import { spawn } from "node:child_process";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { DEMO_PASSWORD } from "@/lib/demo/demo-accounts";
import { measureEditorFrames } from "@/tests/bench/measure-editor-frames";
import type { Figure } from "@/tests/bench/run";

const PORT = "4274";
const ADDRESS = `http://127.0.0.1:${PORT}`;
const STARTS_WITHIN_MS = 180_000;

async function waitForServer(): Promise<void> {
  const end = Date.now() + STARTS_WITHIN_MS;
  while (Date.now() < end) {
    const answer = await fetch(`${ADDRESS}/sign-in`).catch(() => null);
    if (answer?.ok) return;
    await new Promise((done) => setTimeout(done, 500));
  }
  throw new Error("editor-frames: the demo did not start");
}

/** Signs in, begins a stone and ticks off the preparation card. */
async function openBench(page: Page): Promise<void> {
  await page.getByLabel("Sign-in name").fill("student12");
  await page.locator("input[name=password]").fill(DEMO_PASSWORD);
  await page.keyboard.press("Enter");
  await page.waitForURL(/my-stones/);
  await page.getByRole("button", { name: /^Begin C-04/ }).click();
  await page.waitForURL(/bench/);
  const card = page.getByRole("region", { name: "Before the first mark" });
  await card.getByRole("checkbox").first().waitFor();
  for (const step of await card.getByRole("checkbox").all()) await step.check();
  await card.getByRole("button", { name: /^Start plotting/ }).click();
}

export default async function measure(): Promise<Figure[]> {
  const given = process.env.LOUPEWORK_EDITOR_URL;
  if (given !== undefined) return measureEditorFrames(given);
  const script = join(import.meta.dirname, "../support/serve-for-browser.mjs");
  const server = spawn(process.execPath, [script], { stdio: "ignore", env: { ...process.env, PORT } });
  try {
    await waitForServer();
    return await measureEditorFrames(`${ADDRESS}/sign-in`, { prepare: openBench });
  } finally {
    server.kill("SIGTERM");
  }
}
