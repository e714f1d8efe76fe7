/** The network is cut in a real browser for a whole minute while a student goes on drawing. */
import { existsSync } from "node:fs";
import { setTimeout as wait } from "node:timers/promises";
import { type Browser, chromium, type Page } from "@playwright/test";
import { getDatabase } from "@/lib/data/store/database";
import { rebuildSitting, SittingEventSchema } from "@/lib/plot/sitting-event";
import { endServer, makeTrial, type Plotter } from "@/tests/faults/trial";

const PORT = Number(process.env.PORT ?? 4312);
const CUT_MS = 60_000;
const BETWEEN_DOTS_MS = 2000;
const SYSTEM_CHROMIUM = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);

const readWord = (page: Page) => page.getByTestId("save-status").first().getAttribute("data-word");

async function dotAt(page: Page, count: number): Promise<void> {
  const view = page.getByRole("region", { name: "Crown view" }).getByRole("application");
  const box = await view.boundingBox();
  if (box === null) throw new Error("the view is not on the page");
  const angle = count * 0.7;
  const radius = 0.05 + 0.005 * count;
  await page.mouse.click(
    box.x + box.width * (0.5 + radius * Math.cos(angle)),
    box.y + box.height * (0.5 + radius * Math.sin(angle)),
  );
}

async function openBench(browser: Browser, address: string, { cookie, sittingId }: Plotter): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const [name = "", value = ""] = cookie.split("=");
  await context.addCookies([{ name, value, url: address }]);
  const page = await context.newPage();
  await page.goto(`${address}/bench/${sittingId}`);
  await page.getByRole("button", { name: /^Start plotting/ }).click();
  await page.locator('button[aria-haspopup="listbox"]').first().click();
  await page.getByLabel("Search characteristics").fill("pinpoint");
  await page.getByRole("listbox").getByRole("option", { name: "pinpoint" }).first().click();
  await page.getByRole("group", { name: "Tools" }).getByRole("button", { name: "Dot" }).click();
  return page;
}

async function countSaved({ sittingId }: Plotter) {
  const rows = await getDatabase().sittingEvent.findMany({ where: { sittingId }, orderBy: { seq: "asc" } });
  const log = rows.map(({ body }) => SittingEventSchema.parse(body));
  const placed = log.flatMap((event) => (event.kind === "marks" ? event.put.map(({ id }) => id) : []));
  return {
    marks: rebuildSitting(log).plot.marks.length,
    doubled: placed.length - new Set(placed).size,
    isUnbroken: log.every(({ seq }, index) => seq === index + 1),
  };
}

/** Runs the trial; true when every mark drawn meanwhile is saved, once, and the word on the screen was true. */
export async function tryNetworkCut(): Promise<boolean> {
  const trial = await makeTrial(1, PORT);
  const server = await trial.start();
  const browser = await chromium.launch({
    ...(SYSTEM_CHROMIUM === undefined ? {} : { executablePath: SYSTEM_CHROMIUM }),
    chromiumSandbox: process.getuid?.() !== 0,
    args: ["--disable-gpu"],
  });
  const [plotter] = trial.plotters;
  if (plotter === undefined) throw new Error("nobody is seated");
  try {
    const page = await openBench(browser, trial.address, plotter);
    let drawn = 0;
    for (; drawn < 3; drawn += 1) await dotAt(page, drawn);
    await page.getByTestId("save-status").filter({ hasText: "Saved" }).first().waitFor();
    await page.context().setOffline(true);
    const words = new Set<string>();
    const cutAt = performance.now();
    while (performance.now() - cutAt < CUT_MS) {
      await dotAt(page, drawn);
      drawn += 1;
      await wait(BETWEEN_DOTS_MS);
      words.add((await readWord(page)) ?? "");
    }
    const during = await countSaved(plotter);
    await page.context().setOffline(false);
    const backAt = performance.now();
    await page.getByTestId("save-status").filter({ hasText: "Saved" }).first().waitFor({ timeout: 30_000 });
    const tookMs = Math.round(performance.now() - backAt);
    const after = await countSaved(plotter);
    console.log(
      `cut for ${CUT_MS / 1000} s: ${drawn} marks drawn in all, ${during.marks} saved while cut, the bench said ${[...words].join(", ")}; ${after.marks} saved ${tookMs} ms after the network was back, ${after.doubled} doubled`,
    );
    return after.marks === drawn && after.doubled === 0 && after.isUnbroken && !words.has("saved");
  } finally {
    await browser.close();
    await endServer(server, "SIGKILL");
    await trial.remove();
  }
}
