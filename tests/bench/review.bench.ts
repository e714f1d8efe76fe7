/**
 * From the key to the next plot painted, in Chromium, on a fresh demo of its own: the production build, served, signed in to
 * as an instructor who goes through an exercise. `LOUPEWORK_REVIEW_URL` names a server with the demo that runs already.
 */
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { chromium, type Page } from "@playwright/test";
import { DEMO_PASSWORD } from "@/lib/demo/demo-accounts";
import type { Figure } from "@/tests/bench/run";

const PORT = "4276";
const STARTS_WITHIN_MS = 180_000;
const CHROMIUM = "/usr/bin/chromium";
const ARGS = ["--disable-gpu", "--disable-background-networking", "--no-first-run"];
const WARM_UPS = 4;
const STEPS = 40;
/** How long a plot is looked at before the key: enough for the next one to be fetched. */
const LOOK_MS = 900;

async function waitForServer(address: string): Promise<void> {
  const end = Date.now() + STARTS_WITHIN_MS;
  while (Date.now() < end) {
    const answer = await fetch(`${address}/sign-in`).catch(() => null);
    if (answer?.ok) return;
    await new Promise((done) => setTimeout(done, 500));
  }
  throw new Error("review: the demo did not start");
}

// As text: the runner's compiler leaves helpers in functions that the page does not have. The time runs from the key's
// own event to the task after the frame in which the next plot's heading and diagram stand.
const LISTEN = `window.step_ = new Promise((done) => {
  window.addEventListener("keydown", (event) => {
    const from = event.timeStamp;
    const before = document.querySelector("[data-shown]").dataset.shown;
    const look = new MutationObserver(() => {
      if (document.querySelector("[data-shown]").dataset.shown === before) return;
      look.disconnect();
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => done(performance.now() - from);
        channel.port2.postMessage(0);
      });
    });
    look.observe(document.body, { subtree: true, childList: true, attributes: true, attributeFilter: ["data-shown"] });
  }, { once: true, capture: true });
}); undefined`;

async function openFirst(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/sign-in`);
  await page.locator("input[name=login]").fill("instructor");
  await page.locator("input[name=password]").fill(DEMO_PASSWORD);
  await page.keyboard.press("Enter");
  await page.waitForURL(/overview|exercises/);
  await page.goto(`${address}/exercises`);
  await page.getByRole("link", { name: "First look" }).first().click();
  await page.waitForURL(/exercises\/[0-9a-f-]{36}/);
  const cells = page.locator("a[href*='/sittings/']").filter({ hasText: /\d\.\d/ });
  const started = performance.now();
  await cells.first().click();
  await page.locator("[data-shown]").waitFor();
  console.log(`  from the grid to the first plot, not warm: ${Math.round(performance.now() - started)} ms`);
}

async function timeSteps(page: Page): Promise<number[]> {
  const times: number[] = [];
  for (let step = 0; step < WARM_UPS + STEPS; step += 1) {
    await page.waitForTimeout(LOOK_MS);
    await page.evaluate(LISTEN);
    await page.keyboard.press("n");
    const ms = await page.evaluate<number>("window.step_");
    if (step >= WARM_UPS) times.push(ms);
  }
  return times.sort((a, b) => a - b);
}

async function measureAt(address: string): Promise<Figure[]> {
  const browser = await chromium.launch({
    ...(existsSync(CHROMIUM) ? { executablePath: CHROMIUM } : {}),
    args: ARGS,
    chromiumSandbox: false,
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await openFirst(page, address);
    const times = await timeSteps(page);
    const at = (share: number) => times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0;
    const note = `${times.length} steps, one machine for server and browser`;
    return [
      { name: "key to next plot painted, median", value: at(0.5), unit: "ms", note },
      { name: "key to next plot painted, p95", value: at(0.95), unit: "ms" },
    ];
  } finally {
    await browser.close();
  }
}

export default async function measure(): Promise<Figure[]> {
  const given = process.env.LOUPEWORK_REVIEW_URL;
  if (given !== undefined) return measureAt(given);
  const address = `http://127.0.0.1:${PORT}`;
  const script = join(import.meta.dirname, "../support/serve-for-browser.mjs");
  const env = { ...process.env, PORT };
  const server = spawn(process.execPath, [script], { stdio: "ignore", env });
  try {
    await waitForServer(address);
    return await measureAt(address);
  } finally {
    server.kill("SIGTERM");
  }
}
