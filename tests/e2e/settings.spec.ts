import type { Page } from "@playwright/test";
import { expectCleanNow } from "./support/expect-clean";
import { expect, test } from "./support/program";

const near = (page: Page) => page.getByRole("textbox", { name: "Full credit within" });
const save = (page: Page) => page.getByRole("button", { name: "Save the defaults" });
const saved = (page: Page) => page.getByText("Saved: new exercises start with these numbers.");

/** Sets an exercise by its form and opens its rubric. */
async function setExercise(page: Page, title: string): Promise<void> {
  await page.goto("/exercises/new");
  await page.getByText("How plots are scored: the rubric’s numbers").click();
  await expect(page.getByText("0.045 girdle widths")).toBeVisible();
  await page.getByRole("textbox", { name: "Title" }).fill(title);
  await page.getByRole("combobox", { name: "Section" }).click();
  await page.getByRole("option").first().click();
  await page.getByRole("checkbox", { name: /^A-01/ }).first().check();
  await page.getByRole("button", { name: "Set the exercise" }).click();
  await page.waitForURL(/\/exercises\/[0-9a-f-]{36}$/);
  await page.getByRole("link", { name: "Rubric" }).click();
}

test("a director changes a default, a new exercise starts with it, and an older one keeps its own", async ({
  openAs,
}) => {
  const page = await openAs("director");
  const other = await openAs("director");
  await Promise.all([page.goto("/settings"), other.goto("/settings")]);
  await expect(near(page)).toHaveValue("0.03");

  await test.step("a number out of range is told at its field, and nothing is saved", async () => {
    await near(page).fill("0.2");
    await save(page).click();
    await expect(page.getByText("Must be larger than the distance for full credit")).toBeVisible();
    await expect(saved(page)).toHaveCount(0);
  });

  await test.step("without a network nothing is saved, and the page with what was typed stays", async () => {
    await near(page).fill("0.04");
    await page.context().setOffline(true);
    await save(page).click();
    await expect(page.getByText("The server did not answer, so nothing was changed.")).toBeVisible();
    // Longer than it takes to load a page anew, which is what must not be.
    await page.waitForTimeout(1000);
    await expect(near(page)).toHaveValue("0.04");
    await page.context().setOffline(false);
  });

  await test.step("what differs stands beside Loupework's own, and is saved", async () => {
    await near(page).fill("0.045");
    const row = page
      .getByRole("table", { name: "Differs from Loupework’s own numbers" })
      .getByRole("row", { name: /^Full credit within/ });
    await expect(row.getByRole("cell")).toHaveText(["0.03", "0.045"]);
    await save(page).click();
    await expect(saved(page)).toBeVisible();
    await expectCleanNow(page);
  });

  await test.step("whoever began before is told, and overwrites nothing unasked", async () => {
    await near(other).fill("0.02");
    await save(other).click();
    await expect(other.getByText("Someone saved this rubric after you began.")).toBeVisible();
    await expect(near(other)).toHaveValue("0.02");
  });

  await test.step("a new exercise starts with it", async () => {
    await setExercise(page, "By the new defaults");
    await expect(near(page)).toHaveValue("0.045");
  });

  await test.step("one that was set before keeps its own", async () => {
    await page.goto("/exercises");
    await page.getByRole("link", { name: "First look" }).first().click();
    await page.getByRole("link", { name: "Rubric" }).click();
    await expect(near(page)).toHaveValue("0.03");
  });

  await test.step("the trail says what from what to what, and the way back is one press and a save", async () => {
    await page.goto("/trail");
    await expect(page.getByText("Full credit within 0.03 → 0.045").first()).toBeVisible();
    await page.goto("/settings");
    await page.getByRole("button", { name: "Back to Loupework’s own numbers" }).click();
    await expect(near(page)).toHaveValue("0.03");
    await save(page).click();
    await expect(saved(page)).toBeVisible();
    await page.reload();
    await expect(page.getByText("These are Loupework’s own numbers, every one.")).toBeVisible();
  });
});

for (const colorScheme of ["light", "dark"] as const) {
  test(`axe finds nothing in what is typed, with a fault, on a phone and a tablet, ${colorScheme}`, async ({
    openAs,
  }) => {
    for (const viewport of [
      { width: 390, height: 844 },
      { width: 1024, height: 768 },
    ]) {
      const page = await openAs("director", { colorScheme, viewport });
      await page.goto("/settings");
      await near(page).fill("0.2");
      await expect(page.getByText("Must be larger than the distance for full credit")).toBeVisible();
      await expectCleanNow(page);
    }
  });
}

test("an instructor has no settings", async ({ openAs }) => {
  const page = await openAs("instructor");
  await page.goto("/overview");
  await expect(page.getByRole("link", { name: "Settings" })).toHaveCount(0);
  await page.goto("/settings");
  await expect(page.getByRole("heading", { name: "Rubric defaults" })).toHaveCount(0);
  await expect(page.getByRole("heading", { level: 1 })).not.toHaveText("Settings");
});
