import type { Page } from "@playwright/test";
import { listEchoes, listEchoSources } from "@/lib/editor/list-echoes";
import { getDistance } from "@/lib/editor/measure-shape";
import { listVertices } from "@/lib/plot/shape";
import { listExerciseSets } from "@/tests/support/list-exercise-sets";
import { chooseTool, expect, getView, pressAt, test } from "./support/program";

/** Opens a stone of a tray as its instructor does. */
async function openStonePage(page: Page, tray: RegExp, label: string): Promise<void> {
  await page.goto("/trays");
  await page.getByRole("link", { name: tray }).first().click();
  await page.getByRole("link", { name: label, exact: true }).first().click();
  await page.waitForURL(/\/stones\//);
}

/** A predicted echo in the crown view of a stone of the demo with nothing else near it. */
function findLoneEcho(stoneId: string): readonly [number, number] {
  const found = listExerciseSets().find(({ resolved }) =>
    resolved.set.stones.some(({ id }) => id === stoneId),
  );
  if (found === undefined) throw new Error(`the sets have no stone ${stoneId}`);
  const { resolved } = found;
  const index = resolved.set.stones.findIndex(({ id }) => id === stoneId);
  const [stone, solid] = [resolved.set.stones[index], resolved.solids[index]];
  if (stone === undefined || solid === undefined) throw new Error(`the sets have no stone ${stoneId}`);
  const isInside = (name: string) => resolved.characteristics.get(name)?.class === "inside";
  const crown = listEchoSources(stone.marks, isInside)
    .flatMap((source) => listEchoes(solid, source, stone.refractiveIndex))
    .filter(({ view }) => view === "crown")
    .map(({ at }) => at);
  const drawn = [...stone.marks, ...stone.decoys].filter(({ view }) => view === "crown");
  const lone = crown.find(
    (at) =>
      crown.filter((other) => getDistance(other, at) < 0.04).length === 1 &&
      drawn.every(({ shape }) => listVertices(shape).every((vertex) => getDistance(vertex, at) > 0.1)),
  );
  if (lone === undefined) throw new Error(`no echo of ${stoneId} stands alone`);
  return lone;
}

const marks = (page: Page) => page.getByRole("region", { name: "Table of marks" });
const echoes = (page: Page) => page.getByRole("region", { name: /^Predicted echoes/ });

test("an echo becomes a decoy with one press, and undo takes it back", async ({ openAs }) => {
  const page = await openAs("instructor");
  await openStonePage(page, /^Tray B/, "B-02");
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
  await openStonePage(page, /^Tray B/, "B-04");
  await page.getByRole("link", { name: "Open the reference" }).click();
  await expect(echoes(page).getByRole("listitem").first()).toBeVisible();
  await chooseTool(page, "Select");

  const rows = marks(page).getByRole("row");
  const before = await rows.count();
  await pressAt(page, getView(page, "Crown"), findLoneEcho("B-04"));
  await expect(rows).toHaveCount(before + 1);
  await page.getByRole("checkbox", { name: "Predicted echoes" }).uncheck();
  await expect(page.getByRole("checkbox", { name: "Predicted echoes" })).not.toBeChecked();
});

test("the solid turns by keyboard and by button", async ({ openAs }) => {
  const page = await openAs("instructor");
  await openStonePage(page, /^Tray B/, "B-02");
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
  await page.getByRole("button", { name: "Side", exact: true }).click();
  await expect(held).toHaveText("from the side, table up, 6 o'clock towards you");
});
