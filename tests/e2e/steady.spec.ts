import type { Page } from "@playwright/test";
import { expect, test } from "./support/program";

/** Layout instability, the sum of all unexpected shifts: up to 0.1 is good (W3C Layout Instability; web.dev "CLS"). */
const MOST_SHIFT = 0.05;

async function watchShifts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const kept = { sum: 0, where: [] as string[] };
    Object.assign(window, { keptShifts: kept });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & {
        value: number;
        sources?: { node?: Element }[];
      })[]) {
        kept.sum += entry.value;
        kept.where.push(...(entry.sources ?? []).map(({ node }) => `${node?.nodeName}.${node?.className}`));
      }
    }).observe({ type: "layout-shift", buffered: true });
  });
}

const readShifts = (page: Page) =>
  page.evaluate(() => (window as unknown as { keptShifts: { sum: number; where: string[] } }).keptShifts);

/** Whoever presses a link while the page comes to life must press what they aimed at. */
test("no page moves under the pointer while it comes to life", async ({ openAs }) => {
  const page = await openAs("director");
  await page.goto("/exercises");
  await page.getByRole("link", { name: "First look" }).first().click();
  await page.waitForURL(/\/exercises\/[0-9a-f-]{36}$/);
  const exercise = new URL(page.url()).pathname;
  await watchShifts(page);
  for (const address of [exercise, "/overview", "/exercises", "/people", "/trail"]) {
    await page.goto(address);
    // The account's menu answers once the page is alive.
    await page
      .getByRole("button", { name: /Director/i })
      .first()
      .click();
    await expect(page.getByRole("menu")).toBeVisible();
    const { sum, where } = await readShifts(page);
    expect(sum, `${address}: ${where.join(", ")}`).toBeLessThan(MOST_SHIFT);
  }
});
