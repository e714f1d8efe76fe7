import type { Page } from "@playwright/test";
import { DEMO_PASSWORD, expect, getView, test } from "./support/program";

/** Presses Tab until what has the focus answers the test; the whole page is walked once at the most. */
async function tabTo(page: Page, name: RegExp, role?: string): Promise<void> {
  for (let presses = 0; presses < 150; presses += 1) {
    await page.keyboard.press("Tab");
    const focus = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null) return { name: "", role: "" };
      const labels = (element as HTMLInputElement).labels;
      const label =
        labels === null || labels === undefined ? "" : [...labels].map((one) => one.textContent).join(" ");
      const name = element.getAttribute("aria-label") ?? (label || element.textContent || "");
      return { name: name.trim(), role: element.getAttribute("role") ?? element.tagName.toLowerCase() };
    });
    if (name.test(focus.name) && (role === undefined || focus.role === role)) return;
  }
  throw new Error(`nothing named ${name} can be reached with Tab`);
}

test("a student signs in, plots, grades and hands in with the keyboard alone", async ({ page }) => {
  await page.goto("/sign-in");
  await tabTo(page, /Sign-in name/);
  await page.keyboard.type("student5");
  await tabTo(page, /^Password/);
  await page.keyboard.type(DEMO_PASSWORD);
  await page.keyboard.press("Enter");
  await page.waitForURL(/my-stones/);

  await tabTo(page, /^Begin C-01/);
  await page.keyboard.press("Enter");
  await page.waitForURL(/bench/);
  await expect(page.getByRole("heading", { name: "Before the first mark" })).toBeVisible();
  for (const step of [/clean and wiped/, /right way round/, /rock and tilt/, /second time/]) {
    await tabTo(page, step);
    await page.keyboard.press("Space");
  }
  await tabTo(page, /^Start plotting/);
  await page.keyboard.press("Enter");
  const crown = getView(page, "Crown");
  await expect(crown.locator("canvas").first()).toBeVisible();

  await tabTo(page, /Choose what you see/);
  await page.keyboard.press("Enter");
  await expect(page.getByLabel("Search characteristics")).toBeFocused();
  await page.keyboard.type("feather");
  await page.keyboard.press("Enter");
  await tabTo(page, /^Crown view/);
  await page.keyboard.press("d");
  for (let step = 0; step < 4; step += 1) await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("Enter");
  await expect(crown).toHaveAccessibleName(/1 mark$/);
  await page.keyboard.press("Shift+ArrowUp");
  await page.keyboard.press("Enter");
  await expect(crown).toHaveAccessibleName(/2 marks$/);
  await page.keyboard.press("Delete");
  await expect(crown).toHaveAccessibleName(/1 mark$/);
  await page.keyboard.press("Control+z");
  await expect(crown).toHaveAccessibleName(/2 marks$/);

  await tabTo(page, /Add a mark by clock position/);
  await page.keyboard.press("Enter");
  await tabTo(page, /^Clock/);
  await page.keyboard.press("Control+a");
  await page.keyboard.type("4:00");
  await page.keyboard.press("Enter");
  await expect(crown).toHaveAccessibleName(/3 marks$/);
  await expect(page.getByRole("region", { name: "Table of marks" })).toContainText("towards 4 o'clock");

  await page.getByRole("radio", { name: "SI1" }).focus();
  await page.keyboard.press("Space");
  await expect(page.getByTestId("save-status")).toContainText("Saved");
  await tabTo(page, /^Hand in$/);
  await page.keyboard.press("Enter");
  const dialog = page.getByRole("dialog");
  await expect(dialog).toBeVisible();
  await tabTo(page, /^Hand in/);
  await page.keyboard.press("Enter");
  await expect(dialog).toBeHidden();
  await expect(page.getByText(/handed in/i).first()).toBeVisible();
});
