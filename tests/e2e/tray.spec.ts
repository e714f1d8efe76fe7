/** A tray of its own: made from the library, handed out by list and by label, checked, photographed. */
import jsQR from "jsqr";
import sharp from "sharp";
import { readStoneCode } from "@/lib/plot/stone-code";
import { makePicture } from "@/tests/support/make-picture";
import { expectCleanNow } from "./support/expect-clean";
import { chooseCharacteristic, chooseTool, expect, getView, pressAt, test } from "./support/program";

test("a tray's stones go out, come back by their labels, are checked and photographed", async ({
  openAs,
}) => {
  const page = await openAs("instructor");
  await page.goto("/trays/import");
  await page.getByRole("button", { name: "Choose Grade boundaries" }).click();
  await page.getByLabel("Name of the new tray").fill("Desk tray");
  await page.getByLabel("Name of the new tray").blur();
  await expect(page.getByText("Would be made").or(page.getByText("Made")).first()).toBeVisible();
  await page.getByRole("button", { name: "Make the tray" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Desk tray" })).toBeVisible();
  const tray = new URL(page.url()).pathname;
  const table = page.getByRole("table", { name: /^Stones/ });
  const row = table.locator("tbody tr").first();
  const label = (await row.getByRole("rowheader").getByRole("link").textContent())?.trim() ?? "";
  // The last column stands whole on a laptop and on a tablet, and nothing scrolls sideways on a telephone.
  for (const [width, name] of [
    [1440, "Mean points"],
    [1024, "Mean points"],
    [390, "Where"],
  ] as const) {
    await page.setViewportSize({ width, height: 900 });
    const last = await table.getByRole("columnheader", { name }).boundingBox();
    expect((last?.x ?? 0) + (last?.width ?? 9999), `${width}`).toBeLessThanOrEqual(width);
  }
  await page.setViewportSize({ width: 1440, height: 900 });

  await row.getByRole("checkbox").check();
  await page.getByText("A seat", { exact: true }).click();
  await page.getByRole("textbox", { name: "Seat" }).fill("Bench 4");
  await page.getByRole("button", { name: "Hand out 1 stone" }).click();
  await expect(row).toContainText("At Bench 4");
  await expectCleanNow(page);

  await page.goto(`${tray}/labels`);
  const code = /[0-9A-Z]{4}-[0-9A-Z]{4}/.exec(
    (await page.getByRole("listitem").filter({ hasText: label }).first().textContent()) ?? "",
  )?.[0];
  expect(code).toBeDefined();
  const drawn = await page.getByRole("img", { name: `QR code of ${label}`, exact: true }).screenshot();
  const { data, info } = await sharp(drawn).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const read = jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data ?? "";
  expect(new URL(read).origin).toBe(new URL(page.url()).origin);
  expect(readStoneCode(read)).toBe(readStoneCode(code ?? ""));
  await expectCleanNow(page);

  // Paper is light, though the screen is dark.
  const dark = page.getByRole("button", { name: "Dark theme for the grading room" });
  const readInk = () => page.evaluate(() => getComputedStyle(document.querySelector("h1") as Element).color);
  const lightInk = await readInk();
  await dark.click();
  await expect.poll(readInk).not.toBe(lightInk);
  await page.emulateMedia({ media: "print" });
  expect(await readInk()).toBe(lightInk);
  await page.emulateMedia({ media: null });
  await dark.click();

  await page.goto("/trays/out");
  await page.getByRole("textbox", { name: /scan/i }).fill(code ?? "");
  await page.keyboard.press("Enter");
  await expect(page.getByText("taken back from Bench 4")).toBeVisible();
  await expectCleanNow(page);

  await page.goto(`${tray}/check`);
  await chooseTool(page, "Dot");
  await chooseCharacteristic(page, "crystal");
  await pressAt(page, getView(page, "Crown"), [0.12, 0.1]);
  await page.getByRole("button", { name: "Which stone is this?" }).click();
  await expect(page.getByRole("list", { name: "Stones by fit" })).toBeVisible();
  await expectCleanNow(page);

  await page.goto(tray);
  await row.getByRole("rowheader").getByRole("link").click();
  const photographs = page.getByRole("region", { name: "Photographs" });
  await photographs
    .locator('input[type="file"]')
    .setInputFiles({ name: "stone.jpg", mimeType: "image/jpeg", buffer: Buffer.from(await makePicture()) });
  await expect(photographs.getByRole("img")).toBeVisible();
  await photographs
    .locator('input[type="file"]')
    .setInputFiles({ name: "page.jpg", mimeType: "image/jpeg", buffer: Buffer.from("<html></html>") });
  await expect(photographs.getByRole("alert")).toBeVisible();
  await expect(photographs.getByRole("img")).toHaveCount(1);
  await expectCleanNow(page);
});

test("an exercise is tried as a student, and nothing is made of it", async ({ openAs }) => {
  const page = await openAs("instructor");
  await page.goto("/exercises");
  await page.getByRole("link", { name: "First look" }).first().click();
  await page.getByRole("link", { name: "Preview as a student" }).click();
  await expect(page.getByText("No sitting is made and nothing is saved.")).toBeVisible();
  await expectCleanNow(page);
  const asked: string[] = [];
  page.on("request", (request) => {
    if (request.url().includes("/api/sittings/")) asked.push(request.url());
  });
  const stone = page.getByRole("link", { name: /^Look at the bench/ }).first();
  await stone.click();
  await expect(page.getByText("Try whatever you like")).toBeVisible();
  const start = page.getByRole("button", { name: /^Start plotting|^Begin|^Go on/ });
  if (await start.isVisible()) {
    for (const step of await page.getByRole("checkbox").all()) await step.check();
    await start.click();
  }
  await chooseTool(page, "Dot");
  await pressAt(page, getView(page, "Crown"), [0.1, 0.1]);
  await expect(page.getByText("Not saved: preview").first()).toBeVisible();
  await page.getByRole("button", { name: "Hand in" }).first().click();
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /^Hand in/ })
    .click();
  await expect(page.getByRole("dialog").getByText("This is a preview.")).toBeVisible();
  await expectCleanNow(page);
  expect(asked).toEqual([]);
});

test("an exercise is set again for later: every date moves, the stones' own openings too", async ({
  openAs,
}) => {
  const page = await openAs("instructor");
  await page.goto("/exercises");
  await page.getByRole("link", { name: "Unseen stones" }).first().click();
  await page.getByRole("link", { name: "Duplicate" }).click();
  await expect(page.getByRole("button", { name: "Set the copy" })).toBeDisabled();
  await page.getByRole("combobox", { name: "For which section" }).click();
  await page.getByRole("option", { name: /^Clarity plotting, day class/ }).click();
  await page.getByRole("textbox", { name: "Title" }).fill("Unseen stones, once more");
  await page.getByLabel("Opens").fill("2030-03-04T08:00");
  await expectCleanNow(page);
  await page.getByRole("button", { name: "Set the copy" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Unseen stones, once more" })).toBeVisible();
  const head = page.getByRole("columnheader", { name: "D-03" });
  await expect(head.locator("time")).toHaveAttribute("datetime", /^2030-03-0[78]T/);
  await page.getByRole("link", { name: "Change the exercise" }).click();
  await expect(page.getByText("Stones that open later than the exercise: 1 of 3")).toBeVisible();
  await expect(page.getByLabel("D-01 opens")).toHaveValue("");
  await page.getByLabel("D-01 opens").fill("2030-03-03T08:00");
  await page.getByRole("button", { name: "Save the exercise" }).click();
  await expect(page.getByText("Must not be earlier than the exercise")).toBeVisible();
  await expectCleanNow(page);
});
