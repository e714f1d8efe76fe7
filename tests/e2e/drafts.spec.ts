import type { Page } from "@playwright/test";
import {
  chooseCharacteristic,
  chooseTool,
  expect,
  getView,
  openStone,
  prepare,
  pressAt,
  test,
} from "./support/program";

const status = (page: Page) => page.getByTestId("save-status");
const crown = (page: Page) => getView(page, "Crown");

async function openBench(page: Page, label: string): Promise<void> {
  await page.goto("/my-stones");
  await openStone(page, label);
  await prepare(page);
  await chooseCharacteristic(page, "pinpoint");
  await chooseTool(page, "Dot");
}

test("what is drawn survives a reload", async ({ openAs }) => {
  const page = await openAs("student6");
  await openBench(page, "C-02");
  await pressAt(page, crown(page), [0.1, 0.1]);
  await pressAt(page, crown(page), [0.2, -0.1]);
  await expect(status(page)).toContainText("Saved");
  await page.reload();
  await expect(crown(page)).toHaveAccessibleName(/2 marks$/);
});

test("what is drawn without a network is kept, said to be offline, and saved once there is one", async ({
  openAs,
}) => {
  const page = await openAs("student7");
  await openBench(page, "C-02");
  await page.context().setOffline(true);
  await pressAt(page, crown(page), [0.1, 0.1]);
  await expect(status(page)).toContainText("Offline");
  await pressAt(page, crown(page), [-0.1, 0.1]);
  await page.context().setOffline(false);
  await expect(status(page)).toContainText("Saved", { timeout: 40_000 });
  await page.reload();
  await expect(crown(page)).toHaveAccessibleName(/2 marks$/);
});

test("two tabs on one sitting do not overwrite each other", async ({ openAs }) => {
  const first = await openAs("student8");
  await openBench(first, "C-03");
  await pressAt(first, crown(first), [0.1, 0.1]);
  await expect(status(first)).toContainText("Saved");

  const second = await first.context().newPage();
  await second.goto(first.url());
  await expect(status(second)).toContainText("Elsewhere");
  await expect(crown(second)).toHaveAccessibleName(/1 mark$/);
  await second.getByRole("button", { name: "Write here instead" }).click();
  await expect(status(second)).toContainText("Saved");
  await chooseCharacteristic(second, "pinpoint");
  await chooseTool(second, "Dot");
  await pressAt(second, crown(second), [-0.2, 0.1]);
  await expect(status(second)).toContainText("Saved");

  await pressAt(first, crown(first), [-0.2, -0.2]);
  await expect(status(first)).toContainText("Elsewhere");
  await second.reload();
  await expect(crown(second)).toHaveAccessibleName(/2 marks$/);
});
