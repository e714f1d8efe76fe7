/** A roster from its dry run to a student who signs in. The section and its people are this file's own. */
import { expectCleanNow } from "./support/expect-clean";
import { expect, test } from "./support/program";

const ROSTER = `login,name,role,section,term
ros.one,Ros One,student,Roster class,2027 spring
ros.two,"Two, Ros",student,Roster class,2027 spring
`;

const toFile = (text: string) => ({ name: "roster.csv", mimeType: "text/csv", buffer: Buffer.from(text) });

test("a roster is tried, mended, brought in, and its student sets a password", async ({
  openAs,
  browser,
}) => {
  const page = await openAs("director");
  await page.goto("/people/roster");
  const files = page.locator('input[type="file"]');
  await files.setInputFiles(toFile(ROSTER.replace("ros.two", "=cmd")));
  await expect(page.getByText("row 3, login").first()).toBeVisible();
  await expect(page.getByRole("button", { name: "Bring the roster in" })).toBeDisabled();
  await expectCleanNow(page);

  await files.setInputFiles(toFile(ROSTER));
  await expect(page.getByText("Sections that would be made: Roster class (2027 spring).")).toBeVisible();
  await page.getByRole("button", { name: "Bring the roster in" }).click();
  await expect(page.getByText("2 added, 0 changed, 1 section made.")).toBeVisible();
  await page.getByRole("button", { name: "Make 2 invitations" }).click();
  const address = await page
    .getByText(/\/set-password#/)
    .first()
    .textContent();
  await expectCleanNow(page);

  const visitor = await (await browser.newContext()).newPage();
  await visitor.goto(address ?? "");
  await expect(visitor.getByText("You sign in as ros.one.")).toBeVisible();
  await expectCleanNow(visitor);
  await visitor.getByLabel("New password").fill("a loupe of ten times");
  await visitor.getByRole("button", { name: "Set the password" }).click();
  await expect(visitor.getByText("Your password is set.")).toBeVisible();
  await visitor.getByRole("link", { name: "Sign in" }).click();
  await visitor.getByLabel("Sign-in name").fill("ros.one");
  await visitor.getByLabel("Password", { exact: true }).fill("a loupe of ten times");
  await visitor.getByRole("button", { name: "Sign in" }).click();
  await expect(visitor.getByText("No stones are set for you yet")).toBeVisible();
  await visitor.goto(address ?? "");
  await visitor.reload();
  // The framework's own announcer is an alert too.
  await expect(visitor.getByRole("alert").filter({ hasText: "This link does not work" })).toBeVisible();
  await visitor.context().close();

  await page.goto("/people");
  await page.getByRole("button", { name: "Data of Ros One" }).click();
  await page.getByRole("menuitem", { name: "Erase" }).click();
  const dialog = page.getByRole("dialog", { name: "Erase Ros One for good?" });
  await expect(dialog.getByRole("button", { name: "Cancel" })).toBeFocused();
  await expectCleanNow(page);
  await dialog.getByRole("button", { name: "Erase for good" }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByText("Ros One is erased.")).toBeVisible();
  await expect(page.getByRole("rowheader", { name: "Ros One" })).toHaveCount(0);
});

test("who teaches a section makes a link for a student who cannot sign in", async ({ openAs }) => {
  const page = await openAs("instructor");
  await page.goto("/sections");
  await page.getByRole("link", { name: "Clarity plotting, day class" }).click();
  await page.getByRole("button", { name: "Sign-in links" }).click();
  await page.getByRole("button", { name: "Make a link for Idris Penhale" }).click();
  await expect(page.getByText("Sets a new password").first()).toBeVisible();
  await expectCleanNow(page);
});
