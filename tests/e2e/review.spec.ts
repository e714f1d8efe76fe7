/**
 * Review as an instructor does it: from the grid to a plot, on by key, an overrule in the points and undone, a comment, and two
 * who review at once. Leaves every result as it was.
 */
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect, test } from "./support/program";

const readTotal = async (page: Page) =>
  page
    .getByText(/of 100 points/)
    .first()
    .textContent();
const shown = (page: Page) => page.locator("[data-shown]");

async function openFirstWithStrays(page: Page): Promise<void> {
  await page.goto("/exercises");
  await page.getByRole("link", { name: "First look" }).first().click();
  await page.getByRole("textbox", { name: "Search students" }).waitFor();
  await page
    .getByRole("link", { name: /: .* points, .* [1-9]\d* strays?/ })
    .last()
    .click();
  await shown(page).waitFor();
}

test("a plot is overruled, commented on and gone on from, and two reviewers do not overwrite each other", async ({
  openAs,
}) => {
  const page = await openAs("instructor", { viewport: { width: 1440, height: 900 } });
  await openFirstWithStrays(page);
  const first = await shown(page).getAttribute("data-shown");
  const address = page.url();
  const before = await readTotal(page);

  // A second reviewer looks at the same plot before anything is changed.
  const other = await openAs("director");
  await other.goto(address);
  await shown(other).waitFor();

  const strays = page.getByRole("region", { name: "Strays" });
  await strays
    .getByRole("button", { name: /^Overrule/ })
    .first()
    .click();
  const dialog = page.getByRole("dialog");
  await expect(dialog.getByRole("button", { name: "Overrule" })).toBeDisabled();
  // A letter that is typed is no command.
  await dialog.getByLabel("Reason").fill("now seen at the desk");
  await dialog.getByLabel("Reason").press("n");
  expect(await shown(page).getAttribute("data-shown")).toBe(first);
  await dialog.getByRole("button", { name: "Overrule" }).click();
  await expect(dialog).toBeHidden();
  const review = page.getByRole("region", { name: "Your review" });
  await expect(review).toContainText("not held against the plot");
  await expect.poll(() => readTotal(page)).not.toBe(before);

  // The other is told who changed what, keeps what was typed, and sees it.
  const theirs = other.getByRole("region", { name: "Your review" });
  await theirs.getByRole("button", { name: "Comment on the whole" }).click();
  await other.getByLabel("Comment", { exact: true }).fill("Look again at the girdle.");
  await theirs.getByRole("button", { name: "Write" }).click();
  await expect(theirs.getByRole("alert").filter({ hasText: "overruled the cause of mark" })).toBeVisible();
  await expect(other.getByLabel("Comment", { exact: true })).toHaveValue("Look again at the girdle.");
  await expect(theirs).toContainText("not held against the plot");
  await theirs.getByRole("button", { name: "Write" }).click();
  await expect(theirs).toContainText("Look again at the girdle.");
  await theirs.getByRole("button", { name: "Delete" }).click();
  await expect(theirs).not.toContainText("Look again at the girdle.");

  const { violations } = await new AxeBuilder({ page: other }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);

  // The next plot and back, by key; then the overrule is undone from what is in sight by then.
  await page.locator("h1").click();
  await page.keyboard.press("p");
  await expect.poll(() => shown(page).getAttribute("data-shown")).not.toBe(first);
  expect(page.url()).not.toBe(address);
  await page.keyboard.press("n");
  await expect.poll(() => shown(page).getAttribute("data-shown")).toBe(first);
  await expect(page).toHaveURL(address);
  await page.reload();
  await review.getByRole("button", { name: "Undo" }).click();
  await expect(review).toContainText("Nothing is overruled");
  await expect.poll(() => readTotal(page)).toBe(before);
});

test("a plot that was fetched while its cell was pointed at is shown as another reviewer left it since", async ({
  openAs,
}) => {
  const page = await openAs("instructor");
  await page.goto("/exercises");
  await page.getByRole("link", { name: "First look" }).first().click();
  const cell = page.getByRole("link", { name: /: .* points, .* [1-9]\d* strays?/ }).last();
  const href = (await cell.getAttribute("href")) ?? "";
  // The whole page of the cell, not the frame of it that every link has at hand.
  let isFetched = false;
  page.on("response", (response) => {
    const isWhole = response.request().headers()["next-router-prefetch"] === undefined;
    if (isWhole && response.url().includes(href)) isFetched = true;
  });
  await expect(async () => {
    await page.mouse.move(0, 0);
    await cell.hover();
    await expect.poll(() => isFetched, { timeout: 1500 }).toBe(true);
  }).toPass();

  const other = await openAs("director");
  await other.goto(href);
  const theirs = other.getByRole("region", { name: "Your review" });
  await theirs.getByRole("button", { name: "Comment on the whole" }).click();
  await other.getByLabel("Comment", { exact: true }).fill("Seen by two.");
  await theirs.getByRole("button", { name: "Write" }).click();
  await expect(theirs).toContainText("Seen by two.");

  await cell.click();
  const review = page.getByRole("region", { name: "Your review" });
  await expect(review).toContainText("Seen by two.");
  await theirs.getByRole("button", { name: "Delete" }).click();
  await expect(theirs).not.toContainText("Seen by two.");
  await page.goBack();
  await cell.click();
  await expect(review).toContainText("Nothing is overruled");
  await expect(review).not.toContainText("Seen by two.");
});
