import { chooseCharacteristic, chooseTool, expect, getView, pressAt, test } from "./support/program";

interface SetFile {
  stones: { id: string; marks: { shape: unknown }[]; decoys: { shape: unknown }[] }[];
}

/** Every point of a shape as JSON writes it: two coordinates in a row are nobody else's by chance. */
function listPoints(shape: unknown): string[] {
  return JSON.stringify(shape).match(/-?\d\.\d{2,},-?\d\.\d{2,}/g) ?? [];
}

test("nothing that a student's browser receives holds a reference or a decoy before release", async ({
  openAs,
}) => {
  const staff = await openAs("instructor");
  await staff.goto("/exercises");
  await staff.getByRole("link", { name: "Reflections and glints" }).first().click();
  await expect(staff.getByRole("heading", { level: 1, name: "Reflections and glints" })).toBeVisible();
  const exerciseId = new URL(staff.url()).pathname.split("/").pop();
  const set = (await (await staff.request.get(`/api/exercises/${exerciseId}/set.json`)).json()) as SetFile;
  const telling = set.stones.flatMap(({ marks, decoys }) =>
    [...marks, ...decoys].flatMap(({ shape }) => listPoints(shape)),
  );
  expect(telling.length).toBeGreaterThan(10);

  // The control: where a reference may be read, its points are found, so that finding none below means something.
  const reviewed = await staff.locator('a[href*="/sittings/"]').first().getAttribute("href");
  const staffPage = await (await staff.request.get(reviewed ?? "")).text();
  expect(telling.some((points) => staffPage.includes(points))).toBe(true);

  // A student of this test's own: a bench that another browser has open is read-only here.
  const student = await openAs("student9");
  const received: Promise<string>[] = [];
  // Only what has come in whole is read: the body of an answer that was broken off never ends.
  student.on("requestfinished", (request) => {
    if (/\/_next\/static\//.test(request.url())) return;
    received.push(request.response().then((answer) => answer?.text().catch(() => "") ?? ""));
  });
  await student.goto("/my-stones");
  await student.getByRole("link", { name: "Go on plotting" }).first().click();
  const crown = getView(student, "Crown");
  await expect(crown.locator("canvas").first()).toBeVisible();
  const before = Number((await crown.getAttribute("aria-label"))?.match(/(\d+) mark/)?.[1]);
  await chooseCharacteristic(student, "needle");
  await chooseTool(student, "Dot");
  await pressAt(student, crown, [0.05, 0.05]);
  await expect(crown).toHaveAccessibleName(new RegExp(`${before + 1} marks?$`));
  await expect(student.getByTestId("save-status")).toContainText("Saved");
  const whole = await student.request.get(student.url());
  received.push(whole.text());
  for (const path of [`/api/exercises/${exerciseId}/set.json`, `/exercises/${exerciseId}`, "/trays"]) {
    const answer = await student.request.get(path);
    received.push(answer.text());
  }
  const texts = await Promise.all(received);
  expect(texts.length).toBeGreaterThan(5);
  const leaked = telling.filter((number) => texts.some((text) => text.includes(number)));
  expect(
    texts.some((text) => /\d\.\d{2,},-?\d\.\d{2,}/.test(text)),
    "the student's own points are there",
  ).toBe(true);
  expect(leaked).toEqual([]);
});
