/**
 * Frame times of the plot editor in a real browser while a mark is dragged, the pointer hovers and the view is
 * zoomed. Works on any page that shows an editor in bench or reference mode; fills the plot up to a number of marks
 * by pressing on the diagram with the dot tool.
 */
import { existsSync } from "node:fs";
import { type BrowserContext, type CDPSession, chromium, type Locator, type Page } from "@playwright/test";
import { createSeededRandom } from "@/lib/base/seeded-random";
import type { Figure } from "@/tests/bench/run";

export interface EditorFramesOptions {
  /** Marks that the plot holds while it is measured. */
  readonly marks?: number;
  /** How long each movement lasts, ms. */
  readonly lastsMs?: number;
  /** Signs in, passes the preparation card: whatever it takes until the editor is on the page. */
  readonly prepare?: (page: Page, context: BrowserContext) => Promise<void>;
}

const CHROMIUM = "/usr/bin/chromium";
const ARGS = [
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
/** Room that the clock takes beside the girdle: the girdle's radius as a share of the diagram's width. */
const GIRDLE_SHARE = 0.5 / 1.17;

interface Diagram {
  readonly middle: readonly [number, number];
  readonly girdlePx: number;
}

async function readDiagram(view: Locator): Promise<Diagram> {
  const box = await view.boundingBox();
  if (box === null) throw new Error("measureEditorFrames: the diagram is not shown");
  return { middle: [box.x + box.width / 2, box.y + box.height / 2], girdlePx: box.width * GIRDLE_SHARE };
}

/** Chooses a characteristic and presses on the diagram until the plot holds `count` marks. */
async function fillPlot(page: Page, diagram: Diagram, count: number): Promise<void> {
  await page.getByRole("button", { name: "Dot", exact: true }).click();
  const picker = page.locator("button[aria-haspopup=listbox]");
  await picker.click();
  await page.getByRole("option", { name: "pinpoint", exact: true }).click();
  const random = createSeededRandom("editor frames");
  const table = page.getByRole("region", { name: "Table of marks" });
  const countMarks = async () => table.locator("[data-mark-id]").count();
  for (let there = await countMarks(); there < count; there = await countMarks()) {
    for (let i = there; i < count; i += 1) {
      const angle = 2 * Math.PI * random.next();
      const radius = 0.93 * diagram.girdlePx * Math.sqrt(random.next());
      await page.mouse.click(
        diagram.middle[0] + radius * Math.cos(angle),
        diagram.middle[1] + radius * Math.sin(angle),
      );
    }
  }
}

// As text: the runner's compiler leaves helpers in functions that the page does not have.
const START_TIMING = `
  window.frames_ = []; window.isTiming_ = true;
  requestAnimationFrame(function note(now) {
    window.frames_.push(now);
    if (window.isTiming_) requestAnimationFrame(note);
  });`;
const STOP_TIMING = "window.isTiming_ = false; window.frames_";

/** What a movement took: times between frames, and the main thread's own work for each frame, ms. */
interface Timing {
  readonly frames: readonly number[];
  readonly workPerFrame: number;
}

/** Processor time of the page's main thread so far, ms: it does not grow while other programs have the machine. */
async function readWorkMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send("Performance.getMetrics");
  return 1000 * (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN);
}

async function timeFrames(page: Page, move: () => Promise<void>): Promise<Timing> {
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  const before = await readWorkMs(session);
  await page.evaluate(START_TIMING);
  await move();
  const stamps = await page.evaluate<number[]>(STOP_TIMING);
  const work = (await readWorkMs(session)) - before;
  await session.detach();
  const frames = stamps.slice(1).map((stamp, i) => stamp - (stamps[i] ?? stamp));
  return { frames, workPerFrame: work / Math.max(1, frames.length) };
}

/** Moves the pointer round in a slowly growing circle for a time, as fast as the browser takes it. */
async function circle(page: Page, { middle, girdlePx }: Diagram, lastsMs: number): Promise<void> {
  const start = performance.now();
  for (let t = 0; t < lastsMs; t = performance.now() - start) {
    const angle = t / 250;
    const radius = girdlePx * (0.2 + 0.5 * (t / lastsMs));
    await page.mouse.move(middle[0] + radius * Math.cos(angle), middle[1] + radius * Math.sin(angle));
  }
}

function summarise(name: string, { frames, workPerFrame }: Timing): Figure[] {
  const sorted = [...frames].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  const note = `${frames.length} frames, longest ${at(1).toFixed(0)} ms`;
  return [
    { name: `${name}: median`, value: at(0.5), unit: "ms", note },
    { name: `${name}: 95th percentile`, value: at(0.95), unit: "ms" },
    { name: `${name}: main thread for each`, value: workPerFrame, unit: "ms" },
  ];
}

/** Drags the mark that lies in the middle of the diagram (one is put there first). */
async function timeDrag(page: Page, diagram: Diagram, lastsMs: number): Promise<Timing> {
  await page.mouse.click(...diagram.middle);
  await page.getByRole("button", { name: "Select", exact: true }).click();
  await page.mouse.move(...diagram.middle);
  await page.mouse.down();
  const times = await timeFrames(page, () => circle(page, diagram, lastsMs));
  await page.mouse.up();
  return times;
}

async function timeZoom(page: Page, diagram: Diagram, lastsMs: number): Promise<Timing> {
  await page.mouse.move(diagram.middle[0] + 40, diagram.middle[1] - 30);
  return timeFrames(page, async () => {
    const start = performance.now();
    for (let t = 0; t < lastsMs; t = performance.now() - start) {
      await page.mouse.wheel(0, Math.sin(t / 400) > 0 ? -40 : 40);
    }
  });
}

/** Opens the page, fills the plot and measures. The figures are for reading: they depend on the machine. */
export async function measureEditorFrames(url: string, options: EditorFramesOptions = {}): Promise<Figure[]> {
  const { marks = 500, lastsMs = 4000, prepare } = options;
  const browser = await chromium.launch({
    ...(existsSync(CHROMIUM) ? { executablePath: CHROMIUM } : {}),
    chromiumSandbox: false,
    args: ARGS,
  });
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    page.setDefaultTimeout(120_000);
    await page.goto(url);
    await prepare?.(page, context);
    const view = page.locator("[data-view=crown]");
    await view.locator("canvas").first().waitFor();
    await view.scrollIntoViewIfNeeded();
    const diagram = await readDiagram(view);
    const idle = await timeFrames(page, () => circle(page, { ...diagram, girdlePx: 0 }, 1000));
    await fillPlot(page, diagram, marks - 1);
    const drag = await timeDrag(page, diagram, lastsMs);
    const hover = await timeFrames(page, () => circle(page, diagram, lastsMs));
    const zoom = await timeZoom(page, diagram, lastsMs);
    return [
      ...summarise("frames before, nothing drawn", idle),
      ...summarise(`frames while dragging 1 of ${marks}`, drag),
      ...summarise(`frames while hovering over ${marks}`, hover),
      ...summarise(`frames while zooming ${marks}`, zoom),
    ];
  } finally {
    await browser.close();
  }
}
