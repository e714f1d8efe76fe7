import type { Page } from "@playwright/test";
import { expectCleanNow } from "./support/expect-clean";
import { chooseCharacteristic, chooseTool, expect, getView, pressAt, test } from "./support/program";

/** Opens a stone of last term's tray, which no other test looks at. */
async function openWornStone(page: Page, label: string): Promise<string> {
  await page.goto("/trays");
  await page
    .getByRole("link", { name: /^Tray D/ })
    .first()
    .click();
  await page.getByRole("link", { name: label, exact: true }).first().click();
  await page.waitForURL(/\/stones\/[0-9a-f-]{36}$/);
  return new URL(page.url()).pathname;
}

test("a place that many students mark becomes part of the reference in one step, and a rescore is offered", async ({
  openAs,
}) => {
  const page = await openAs("instructor2");
  const stone = await openWornStone(page, "D-02");
  const places = page.getByRole("region", { name: "Places that many mark and the reference does not" });
  await expect(places.getByRole("heading", { name: /May be fresh damage/ })).toBeVisible();
  await expect(places).toContainText("6 of 12 students mark it");
  await expect(page.getByRole("figure", { name: "What students overlook most" })).toBeVisible();
  await expect(getView(page, "Crown").locator("canvas").first()).toBeVisible();
  await expectCleanNow(page);

  await places.getByRole("button", { name: "Add the damage" }).click();
  await page.waitForURL(/\/reference$/);
  await expect(page.getByRole("region", { name: "Table of marks" })).toContainText("chip");
  await expect(page.getByLabel("Note to this version")).toHaveValue(
    /Added fresh damage that 6 of 12 students mark, seen since/,
  );
  await page.getByRole("button", { name: "Save as version 2" }).click();
  const saving = page.getByRole("region", { name: "Grades and saving" });
  const older = saving.getByRole("region", { name: "Results by an older reference" });
  await expect(older).toContainText("Worn stones, Clarity plotting, last term: 12 results");
  await expect(older.getByRole("link", { name: "See what a rescore would change" })).toHaveAttribute(
    "href",
    /\/rescore$/,
  );
  await page.goto(stone);
  await expect(places).toContainText("No place piles up enough strays to suggest anything.");
});

test("a second reader plots blind, is shown nothing of the reference, and sees the differences once handed in", async ({
  openAs,
}) => {
  const page = await openAs("director");
  const stone = await openWornStone(page, "D-03");
  await page.getByRole("button", { name: "Plot it as second reader" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Begin" }).click();
  await page.waitForURL(/\/second-reading\//);
  await expect(getView(page, "Crown").locator("canvas").first()).toBeVisible();
  await expectCleanNow(page);

  await page.goto(`${stone}/reference`);
  await expect(page).toHaveURL(/\/second-readings\?kept/);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Kept from you while you read blind");
  await expectCleanNow(page);
  const set = await page.request.get(`/api${stone.replace(/\/stones\/.*/, "")}/set.json`);
  expect(set.status()).toBe(403);
  expect(await set.text()).toContain("Hand the reading in or give it up first");

  await page.getByRole("link", { name: "Go on reading" }).click();
  await expect(getView(page, "Crown").locator("canvas").first()).toBeVisible();
  await chooseTool(page, "Dot");
  await chooseCharacteristic(page, "pinpoint");
  await pressAt(page, getView(page, "Crown"), [0.2, 0.2]);
  await expect(page.getByRole("region", { name: "Table of marks" })).toContainText("pinpoint");
  await page.getByRole("combobox", { name: /^Clarity/ }).click();
  await page.getByRole("option", { name: "VS1", exact: true }).click();
  await page.getByRole("button", { name: "Hand in" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Hand in" }).click();
  await expect(page.getByRole("heading", { name: "Differences" })).toBeVisible();
  await expect(page.getByText(/Clarity: VVS2 in the reference, VS1 by the second reader/)).toBeVisible();
  await expectCleanNow(page);
});

test("a director sees sections side by side, the stones that mislead and the readers' agreement", async ({
  openAs,
}) => {
  const page = await openAs("director");
  await page.goto("/overview");
  await page.getByRole("link", { name: "Program", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Program" })).toBeVisible();
  const funnel = page.getByRole("figure", { name: "Reference marks found, by section" });
  await funnel.getByText("Numbers behind it").click();
  await expect(funnel.getByRole("rowheader", { name: "Clarity plotting, last term" })).toBeVisible();
  await page.getByRole("link", { name: "Clarity exact" }).click();
  await expect(page.getByRole("figure", { name: "Clarity exact, by instructor" })).toBeVisible();
  await expect(page.getByRole("figure", { name: "Clarity grades of two readers" })).toBeVisible();
  const instructor = await openAs("instructor");
  expect((await instructor.goto("/program"))?.status()).toBe(404);
});
