import type { Page } from "@playwright/test";
import { expect, test } from "./support/program";

/** Opens the demo's first exercise, whose work is handed in and scored. */
async function openScored(page: Page): Promise<string> {
  await page.goto("/exercises");
  await page.getByRole("link", { name: "First look" }).first().click();
  await page.waitForURL(/\/exercises\/[0-9a-f-]{36}$/);
  return page.url();
}

const points = (page: Page) => page.getByRole("table", { name: "Points of the example" });
const readTotal = async (page: Page) =>
  Number(
    await points(page)
      .getByRole("row", { name: /^Total/ })
      .getByRole("cell")
      .nth(1)
      .textContent(),
  );

test("a changed rubric shows its effect, lists what it would rescore, and changes points only when applied", async ({
  openAs,
}) => {
  const page = await openAs("director");
  const url = await openScored(page);
  const grid = page.getByRole("region", { name: "Review grid, scrolls sideways" });
  const before = await grid.textContent();
  await page.getByRole("link", { name: "Rubric" }).click();
  await expect(points(page)).toBeVisible();
  // The diagram is drawn once the page is alive.
  await expect(page.locator("canvas").first()).toBeVisible();
  const start = await readTotal(page);

  await test.step("a number out of range is told at its field, and nothing can be saved", async () => {
    await page.getByLabel("No credit beyond").fill("0.01");
    await expect(page.getByText("Must be larger than the distance for full credit")).toBeVisible();
    await page.getByRole("button", { name: /^Save as version/ }).click();
    await expect(page).toHaveURL(/\/rubric$/);
    await page.getByLabel("No credit beyond").fill("0.1");
  });

  await test.step("the example follows", async () => {
    await page.getByRole("textbox", { name: "Right grade" }).fill("100");
    await page.getByLabel("The plot", { exact: false }).first().fill("40");
    await expect(page.getByText("Must add up to 100, not 70")).toBeVisible();
    await page.getByLabel("The clarity grade").fill("50");
    await expect.poll(() => readTotal(page)).not.toBe(start);
  });

  await test.step("saving lists first", async () => {
    await page.getByRole("button", { name: /^Save as version/ }).click();
    await page.waitForURL(/\/rescore$/);
    await expect(page.getByRole("heading", { name: "What it would change" })).toBeVisible({
      timeout: 60_000,
    });
    await page.goto(url);
    await expect(page.getByText(/results were scored by an older rubric\./)).toBeVisible();
    expect(await grid.textContent(), "no points have changed").toBe(before);
    await page.getByRole("link", { name: "A rescore is worked out and waits for you" }).click();
    await page.waitForURL(/\/rescore$/, { timeout: 30_000 });
    await expect(page.getByRole("button", { name: "Apply the rescore" })).toBeVisible();
  });

  await test.step("what is listed is what is applied", async () => {
    const first = page.getByRole("row").nth(1);
    const [name, , , after] = [
      await first.getByRole("rowheader").textContent(),
      ...(await first.getByRole("cell").allTextContents()),
    ];
    await page.getByRole("button", { name: "Apply the rescore" }).click();
    await page.getByRole("dialog").getByRole("button", { name: "Rescore" }).click();
    await expect(page.getByRole("heading", { name: "The last rescore" })).toBeVisible();
    await page.goto(url);
    await expect(page.getByText(/scored by an older/)).toHaveCount(0);
    await expect(grid.getByRole("row", { name: new RegExp(`^${name}`) })).toContainText(
      Number(after).toFixed(1),
    );
  });

  await test.step("the trail has it", async () => {
    await page.goto("/trail");
    await expect(page.getByText(/results changed \(\d+ up, \d+ down\); mean/)).toBeVisible();
  });
});

test("a sitting's page shows staff the distance that no rubric enters", async ({ openAs }) => {
  const page = await openAs("director");
  await openScored(page);
  await page
    .getByRole("region", { name: "Review grid, scrolls sideways" })
    .getByRole("link", { name: /points/ })
    .first()
    .click();
  const distance = page.getByRole("region", { name: "Distance without a rubric" });
  await expect(distance).toContainText("c = 0.1");
  await expect(distance).toContainText(/OSPA, mean\s*0\.\d{3}/);
});
