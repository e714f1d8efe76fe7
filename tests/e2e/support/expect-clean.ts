import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect } from "./program";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** Axe finds nothing on the page as it stands, and it does not scroll sideways. */
export async function expectCleanNow(page: Page): Promise<void> {
  // What stays in place while a page scrolls covers what is under it: looked at from the top.
  await page.evaluate(() => window.scrollTo(0, 0));
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  const found = violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`,
  );
  expect(found, page.url()).toEqual([]);
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over, `${page.url()} is wider than the window, px`).toBeLessThanOrEqual(0);
}
