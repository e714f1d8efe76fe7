import { expect, test } from "./support/program";

test("a section's report: read, narrowed, opened to a student, taken away as files", async ({ openAs }) => {
  const page = await openAs("instructor");
  await page.goto("/sections");
  await page.getByRole("link", { name: "Clarity plotting, day class" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Clarity plotting, day class" })).toBeVisible();
  for (const title of ["Reference and plotted grade", "Found, by characteristic", "Students and marks"]) {
    await expect(page.getByRole("figure", { name: title })).toBeVisible();
  }
  const all = Number(/(\d+) plots scored/.exec((await page.locator("main").textContent()) ?? "")?.[1]);

  const strays = page.getByRole("figure", { name: "Strays by cause, by week" });
  await strays.getByText("Numbers behind it").click();
  await expect(strays.getByRole("columnheader", { name: "dust" })).toBeVisible();
  const download = page.waitForEvent("download");
  await strays.getByRole("button", { name: /as SVG$/ }).click();
  expect((await download).suggestedFilename()).toBe("strays-by-week.svg");

  await page.getByLabel("Exercise").selectOption({ label: "First look" });
  await expect(page).toHaveURL(/\?exercise=/);
  await expect(page.locator("main")).toContainText("60 plots scored");
  expect(all).toBeGreaterThan(60);

  const address = new URL(page.url()).pathname;
  for (const [file, start] of [
    ["gradebook.csv", "Student,Sign-in name"],
    ["items.csv", "Student,Sign-in name"],
    ["oneroster.zip", "PK"],
  ] as const) {
    const answer = await page.request.get(`/api${address}/${file}`);
    expect(answer.status()).toBe(200);
    expect((await answer.body()).toString("latin1").startsWith(start)).toBe(true);
  }

  await page
    .getByRole("table", { name: /^Students/ })
    .getByRole("link", { name: "Idris Penhale" })
    .click();
  await expect(page.getByRole("heading", { level: 1, name: "Idris Penhale" })).toBeVisible();
});

test("a student reads their own progress and nothing of the section", async ({ openAs }) => {
  const page = await openAs("student4");
  await page.goto("/progress");
  await expect(page.getByRole("heading", { name: "Try next" })).toBeVisible();
  // Only the five stones of the released exercise; the two that were handed in since are not counted.
  await expect(page.getByRole("table", { name: /^Stones with a debrief/ }).locator("tbody tr")).toHaveCount(
    5,
  );
  const section = await page.request.get("/sections");
  expect(section.status()).toBe(404);
});
