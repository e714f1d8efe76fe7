/** The watch from both sides: a student's burst of dots shows to the instructor by itself, and a word comes back. */
import AxeBuilder from "@axe-core/playwright";
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

const STUDENT = "Noor Delacey";

test("dotting shows on the watch without a reload, a note reaches the bench, and that it was seen comes back", async ({
  openAs,
}) => {
  const watch = await openAs("instructor");
  await watch.goto("/watch");
  await expect(watch.getByTestId("feed-mode")).toContainText("Live");

  const bench = await openAs("student10");
  await bench.goto("/my-stones");
  await openStone(bench, "C-01");

  const row = watch.getByRole("row").filter({ hasText: STUDENT }).filter({ hasText: "Grade boundaries" });
  await expect(row).toContainText("not prepared");
  await prepare(bench);
  await expect(row).not.toContainText("not prepared");

  await chooseCharacteristic(bench, "pinpoint");
  await chooseTool(bench, "Dot");
  const crown = getView(bench, "Crown");
  for (let dot = 0; dot < 7; dot += 1) await pressAt(bench, crown, [-0.24 + 0.08 * dot, 0.1]);
  await expect(row).toContainText("dotting", { timeout: 5000 });
  await expect(row.getByRole("cell").nth(1)).toHaveText("7");
  await expect(watch.getByRole("button", { name: /1\s*dotting now/ })).toBeVisible();
  await expect(watch.getByTestId("feed-mode")).toContainText("Live");

  // The plot as it grows: one more mark shows in it by itself.
  await row.getByRole("button", { name: new RegExp(STUDENT) }).click();
  const plot = watch.getByRole("region", { name: "Plot so far" });
  const looked = plot.getByRole("region", { name: "Plot, crown view" }).getByRole("application");
  await expect(looked).toHaveAccessibleName(/7 marks/);
  await expect(
    watch.getByRole("region", { name: "Reference" }).getByRole("application").first(),
  ).toBeVisible();
  await pressAt(bench, crown, [0.1, -0.2]);
  await expect(looked).toHaveAccessibleName(/8 marks/);

  await watch.getByRole("button", { name: "Clean it and look again." }).click();
  await watch.getByRole("button", { name: "Send", exact: true }).click();
  const note = bench.getByRole("status", { name: "Notes" });
  await expect(note).toContainText("Clean it and look again.");
  await expect(watch.getByRole("region", { name: "Notes sent" })).toContainText("seen at");
  await expect(row).toContainText("Note seen");
  const { violations } = await new AxeBuilder({ page: watch }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  await note.getByRole("button", { name: "Put away" }).click();
  await expect(note).not.toContainText("Clean it");
});
