import type { Page } from "@playwright/test";
import { chooseTool, expect, getView, test, toPage } from "./support/program";

/** Opens a stone of a tray as its instructor does. */
async function openStonePage(page: Page, tray: RegExp, label: string): Promise<void> {
  await page.goto("/trays");
  await page.getByRole("link", { name: tray }).first().click();
  await page.getByRole("link", { name: label, exact: true }).first().click();
  await page.waitForURL(/\/stones\//);
}

const marks = (page: Page) => page.getByRole("region", { name: "Table of marks" });
const echoes = (page: Page) => page.getByRole("region", { name: /^Predicted echoes/ });

test("an echo becomes a decoy with one press, and undo takes it back", async ({ openAs }) => {
  const page = await openAs("instructor");
  await openStonePage(page, /Reflections/, "B-02");
  await page.getByRole("link", { name: "Open the reference" }).click();
  await expect(getView(page, "Crown").locator("canvas").first()).toBeVisible();

  const first = echoes(page).getByRole("listitem").first();
  await expect(first).toContainText(/(Crown|Pavilion): echo of mark \d+, \d+%, .+, seen through .+ by .+/);
  const rows = marks(page).getByRole("row");
  const before = await rows.count();
  const make = echoes(page).getByRole("button", { name: /^Make it a decoy/ });
  await make.first().click();
  await expect(rows).toHaveCount(before + 1);
  await expect(rows.last()).toContainText("decoy: echo of an inclusion");
  // The button keeps its place and the focus, and now takes the decoy back.
  const takeBack = echoes(page)
    .getByRole("button", { name: /^Decoy \d+: take it back/ })
    .last();
  await expect(takeBack).toBeVisible();

  await page.getByRole("button", { name: "Undo" }).click();
  await expect(rows).toHaveCount(before);
  await page.getByRole("button", { name: "Redo" }).click();
  await expect(rows).toHaveCount(before + 1);
  await expect(page.getByText("Not saved yet", { exact: true })).toBeVisible();
});

test("a ring pressed on the diagram becomes a decoy, and the layer can be switched off", async ({
  openAs,
}) => {
  const page = await openAs("instructor");
  await openStonePage(page, /Reflections/, "B-04");
  await page.getByRole("link", { name: "Open the reference" }).click();
  await expect(echoes(page).getByRole("listitem").first()).toBeVisible();
  await chooseTool(page, "Select");

  // Where the strongest crown echo lies is found by pointing at its row: the diagram and the row light up together.
  const rows = marks(page).getByRole("row");
  const before = await rows.count();
  const crown = getView(page, "Crown");
  let pressed = false;
  for (let radius = 0.05; radius < 0.45 && !pressed; radius += 0.02) {
    for (let turn = 0; turn < 24 && !pressed; turn += 1) {
      const angle = (turn * Math.PI) / 12;
      const { x, y } = await toPage(crown, [radius * Math.cos(angle), radius * Math.sin(angle)]);
      await page.mouse.move(x, y);
      const isLit = await echoes(page).locator("li[data-highlighted]").count();
      if (isLit === 0) continue;
      await page.mouse.down();
      await page.mouse.up();
      pressed = true;
    }
  }
  expect(pressed).toBe(true);
  await expect(rows).toHaveCount(before + 1);
  await page.getByRole("checkbox", { name: "Predicted echoes" }).uncheck();
  await expect(page.getByRole("checkbox", { name: "Predicted echoes" })).not.toBeChecked();
});

test("the solid turns by keyboard and by button", async ({ openAs }) => {
  const page = await openAs("instructor");
  await openStonePage(page, /Reflections/, "B-02");
  const solid = page.getByRole("application", { name: /^Solid, \d+ marks at their depth$/ });
  const held = page.getByTestId("how-held");
  await expect(held).toHaveText("crown tipped away, 6 o'clock towards you");
  const drawn = () => solid.locator("svg path").first().getAttribute("d");
  const before = await drawn();
  await solid.focus();
  for (let press = 0; press < 6; press += 1) await page.keyboard.press("ArrowRight");
  await expect(held).toHaveText("crown tipped away, 9 o'clock towards you");
  expect(await drawn()).not.toBe(before);
  for (let press = 0; press < 8; press += 1) await page.keyboard.press("ArrowUp");
  await expect(held).toHaveText(/^pavilion towards you/);
  await page.keyboard.press("Home");
  await expect(held).toHaveText("crown tipped away, 6 o'clock towards you");
  expect(await drawn()).toBe(before);
  await page.getByRole("button", { name: "Side" }).click();
  await expect(held).toHaveText("from the side, table up, 6 o'clock towards you");
});
