import { execFile } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import type { Page } from "@playwright/test";
import {
  chooseCharacteristic,
  chooseTool,
  dragAlong,
  expect,
  getView,
  openStone,
  prepare,
  pressAt,
  test,
} from "./support/program";

const run = promisify(execFile);
const ROOT = join(import.meta.dirname, "../..");
const NAME = "Browser tray";
const LABEL = "Q-77";
const EXERCISE = "Browser exercise";

/** Ring about a point, girdle widths. */
const ring = (x: number, y: number, radius: number) =>
  Array.from({ length: 9 }, (_, i): [number, number] => [
    x + radius * Math.cos((i / 8) * 2 * Math.PI * 0.98),
    y + radius * Math.sin((i / 8) * 2 * Math.PI * 0.98),
  ]);

async function makeStone(page: Page): Promise<void> {
  await page.goto("/trays/new");
  await page.getByRole("textbox", { name: "Name" }).fill(NAME);
  await page.getByRole("button", { name: "Make the tray" }).click();
  await page.getByRole("link", { name: "Add a stone" }).first().click();
  await page.getByRole("textbox", { name: "Label" }).fill(LABEL);
  await page.getByRole("textbox", { name: "Weight" }).fill("0.52");
  await page.getByRole("textbox", { name: "Largest diameter" }).fill("5.2");
  await page.getByRole("textbox", { name: "Smallest diameter" }).fill("5.17");
  await page.getByRole("textbox", { name: "Depth" }).fill("3.2");
  await page.getByRole("button", { name: "Put it in the tray" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(LABEL);
}

async function drawReference(page: Page): Promise<void> {
  const crown = getView(page, "Crown");
  await expect(crown.locator("canvas").first()).toBeVisible();
  await chooseCharacteristic(page, "crystal");
  await chooseTool(page, "Outline");
  await dragAlong(page, crown, ring(0.1, 0.05, 0.03));
  await chooseCharacteristic(page, "pinpoint");
  await chooseTool(page, "Dot");
  await pressAt(page, crown, [-0.2, 0.1]);
  await chooseCharacteristic(page, "feather");
  await chooseTool(page, "Stroke");
  await dragAlong(page, crown, [
    [0, -0.3],
    [0.05, -0.36],
    [0.06, -0.42],
  ]);
  await expect(
    page.getByRole("region", { name: "Crown view" }).getByRole("application"),
  ).toHaveAccessibleName(/3 marks/);
  await page
    .getByRole("textbox", { name: "Clarity" })
    .or(page.getByRole("combobox", { name: "Clarity" }))
    .click();
  await page.getByRole("option", { name: /^SI1/ }).click();
  await page.getByRole("button", { name: "Save as version 1" }).click();
  await expect(page.getByRole("link", { name: "Version 1" })).toBeVisible();
}

async function setExercise(page: Page): Promise<void> {
  await page.goto("/exercises/new");
  await page.getByRole("textbox", { name: "Title" }).fill(EXERCISE);
  await page
    .getByRole("group", { name: NAME })
    .getByRole("checkbox", { name: new RegExp(`^${LABEL}`) })
    .check();
  await page.getByRole("button", { name: "Set the exercise" }).click();
  await expect(page.getByRole("heading", { level: 1, name: EXERCISE })).toBeVisible();
}

async function plotAndHandIn(page: Page): Promise<void> {
  await page.goto("/my-stones");
  await openStone(page, LABEL);
  await prepare(page);
  const crown = getView(page, "Crown");
  await chooseCharacteristic(page, "crystal");
  await chooseTool(page, "Outline");
  await dragAlong(page, crown, ring(0.105, 0.045, 0.028));
  await chooseCharacteristic(page, "pinpoint");
  await chooseTool(page, "Dot");
  await pressAt(page, crown, [-0.2, 0.11]);
  await pressAt(page, crown, [0.33, 0.1]);
  await chooseTool(page, "Select");
  await dragAlong(page, crown, [
    [0.33, 0.1],
    [0.3, 0.15],
  ]);
  await page.getByRole("radio", { name: "SI2" }).check({ force: true });
  await expect(page.getByTestId("save-status")).toContainText("Saved");
  await page.getByRole("button", { name: "Hand in", exact: true }).click();
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /^Hand in/ })
    .click();
  await expect(page.getByText(/handed in/i).first()).toBeVisible();
}

/** Reads a download of the exercise as the staff member who is signed in. */
async function download(page: Page, file: "set.json" | "plots.json"): Promise<string> {
  const exerciseId = new URL(page.url()).pathname.split("/").pop();
  const answer = await page.request.get(`/api/exercises/${exerciseId}/${file}`);
  expect(answer.ok()).toBe(true);
  return answer.text();
}

test("from an empty tray to a debrief, with the mouse, and the command line agrees", async ({ openAs }) => {
  const staff = await openAs("instructor");
  await makeStone(staff);
  await staff
    .getByRole("link", { name: /reference/i })
    .first()
    .click();
  await drawReference(staff);
  await setExercise(staff);

  const student = await openAs("student3", { colorScheme: "dark" });
  await plotAndHandIn(student);
  await student.goto("/my-stones");
  await expect(
    student.getByText("The debrief opens once your instructor releases it.").first(),
  ).toBeVisible();

  await staff.reload();
  await staff.getByRole("button", { name: "Release all 1" }).click();
  await staff.getByRole("dialog").getByRole("button", { name: "Release" }).click();
  await expect(staff.getByText("Nothing waits to be released.")).toBeVisible();

  await student.reload();
  await student
    .getByRole("link", { name: `Read the debrief ${LABEL}` })
    .first()
    .click();
  const points = student
    .getByRole("table")
    .filter({ has: student.getByRole("rowheader", { name: "Total" }) });
  await expect(points).toBeVisible();
  for (const heading of ["Found", "Overlooked", "Strays"]) {
    await expect(student.getByRole("heading", { name: new RegExp(`^${heading}`) })).toBeVisible();
  }
  const shown = Number(await points.getByRole("row", { name: "Total" }).getByRole("cell").textContent());

  const folder = mkdtempSync(join(tmpdir(), "loupework-flow-"));
  writeFileSync(join(folder, "set.json"), await download(staff, "set.json"));
  writeFileSync(join(folder, "plots.json"), await download(staff, "plots.json"));
  const args = [
    "run",
    "--silent",
    "cli",
    "--",
    "score",
    "--set",
    join(folder, "set.json"),
    "--plots",
    join(folder, "plots.json"),
  ];
  const { stdout } = await run("npm", args, { cwd: ROOT });
  const { results } = JSON.parse(stdout) as {
    results: { total: number; overlooked: string[]; strays: unknown[] }[];
  };
  expect(results).toHaveLength(1);
  expect(results[0]?.total).toBe(shown);
  expect(results[0]?.overlooked).toHaveLength(1);
  expect(results[0]?.strays).toHaveLength(1);
  expect(shown).toBeGreaterThan(20);
  expect(shown).toBeLessThan(100);
});
