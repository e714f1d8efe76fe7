/**
 * From the key to the next plot painted, and from a cell of the grid to its plot, in Chromium, on a fresh demo of its own:
 * the production build, served, signed in to as an instructor who goes through an exercise. `LOUPEWORK_REVIEW_URL` names a
 * server with the demo that runs already.
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
/** How long the grid is looked at before the first cell, and how many cells are opened from it after that. */
const GRID_MS = 3000;
const OPENINGS = 12;
/** How long a hand points at a cell before it presses, and how long it presses. */
const POINT_MS = 60;
const PRESS_MS = 60;
const LONGEST_STEP_MS = 10_000;

async function waitForServer(address: string): Promise<void> {
  const end = Date.now() + STARTS_WITHIN_MS;
  while (Date.now() < end) {
    const answer = await fetch(`${address}/sign-in`).catch(() => null);
    if (answer?.ok) return;
    await new Promise((done) => setTimeout(done, 500));
  }
  throw new Error("review: the demo did not start");
}

// As text: the runner's compiler leaves helpers in functions that the page does not have. The time runs from the event
// itself to the task after the frame in which another plot's heading and diagram stand.
const toListener = (event: "keydown" | "click") => `window.step_ = new Promise((done) => {
  window.addEventListener("${event}", (event) => {
    const from = event.timeStamp;
    const read = () => document.querySelector("[data-shown]")?.dataset.shown;
    const before = read();
    const look = new MutationObserver(() => {
      if (read() === undefined || read() === before || document.querySelector("canvas") === null) return;
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

/** Waits for it; -1 is never. */
async function readStep(page: Page): Promise<number> {
  const late = `new Promise((done) => setTimeout(() => done(-1), ${LONGEST_STEP_MS}))`;
  const ms = await page.evaluate<number>(`Promise.race([window.step_, ${late}])`);
  if (ms < 0) throw new Error("review: no other plot came");
  return ms;
}

async function openGrid(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/sign-in`);
  await page.locator("input[name=login]").fill("instructor");
  await page.locator("input[name=password]").fill(DEMO_PASSWORD);
  await page.keyboard.press("Enter");
  await page.waitForURL(/overview|exercises/);
  await page.goto(`${address}/exercises`);
  await page.getByRole("link", { name: "First look" }).first().click();
  await page.waitForURL(/exercises\/[0-9a-f-]{36}/);
}

const listCells = (page: Page) => page.locator("a[href*='/sittings/']").filter({ hasText: /\d\.\d/ });

/** Points at a cell and presses it, as a hand does. */
async function timeOpening(page: Page, index: number): Promise<number> {
  const cell = listCells(page).nth(index);
  await cell.scrollIntoViewIfNeeded();
  await page.evaluate(toListener("click"));
  await cell.hover();
  await page.waitForTimeout(POINT_MS);
  await cell.click({ delay: PRESS_MS });
  return readStep(page);
}

async function timeOpenings(page: Page): Promise<{ first: number; warm: number[] }> {
  const times: number[] = [];
  for (let index = 0; index <= OPENINGS; index += 1) {
    await listCells(page).first().waitFor();
    await page.waitForTimeout(index === 0 ? GRID_MS : LOOK_MS);
    times.push(await timeOpening(page, index * 3));
    await page.waitForTimeout(LOOK_MS);
    await page.goBack();
  }
  const [first = 0, ...warm] = times;
  return { first, warm: warm.sort((a, b) => a - b) };
}

/** From the first plot on. */
async function timeSteps(page: Page): Promise<number[]> {
  await listCells(page).first().click();
  await page.locator("[data-shown]").waitFor();
  const times: number[] = [];
  for (let step = 0; step < WARM_UPS + STEPS; step += 1) {
    await page.waitForTimeout(LOOK_MS);
    await page.evaluate(toListener("keydown"));
    await page.keyboard.press("n");
    const ms = await readStep(page);
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
    await openGrid(page, address);
    const { first, warm } = await timeOpenings(page);
    console.log(`  from the grid to the first plot that is opened: ${Math.round(first)} ms`);
    const times = await timeSteps(page);
    const pick = (of: readonly number[], share: number) =>
      of[Math.min(of.length - 1, Math.floor(share * of.length))] ?? 0;
    const at = (share: number) => pick(times, share);
    const note = `${times.length} steps, one machine for server and browser`;
    return [
      { name: "cell of the grid to its plot painted, median", value: pick(warm, 0.5), unit: "ms" },
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
