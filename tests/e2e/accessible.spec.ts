import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect, test } from "./support/program";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

async function expectClean(page: Page, address: string): Promise<void> {
  // A page that keeps a stream open is never idle: it is looked at as it stands after a while.
  await page.waitForLoadState("networkidle", { timeout: 5000 }).catch(() => undefined);
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  const found = violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`,
  );
  expect(found, address).toEqual([]);
}

/** No page scrolls sideways. */
async function expectNoSideways(page: Page, address: string): Promise<void> {
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over, `${address} is wider than the window, px`).toBeLessThanOrEqual(0);
}

async function findHref(page: Page, start: string, pattern: RegExp): Promise<string> {
  await page.goto(start);
  const hrefs = await page
    .locator("a[href]")
    .evaluateAll((links) => links.map((link) => link.getAttribute("href") ?? ""));
  const found = hrefs.find((href) => pattern.test(href));
  if (found === undefined) throw new Error(`${start} has no link like ${pattern}`);
  return found;
}

/** Every page of a role, by following the program's own links. */
const PAGES: Record<string, (page: Page) => Promise<string[]>> = {
  student2: async (page) => [
    "/my-stones",
    await findHref(page, "/my-stones", /^\/debrief\//),
    "/progress",
    "/account",
  ],
  student1: async (page) => [await findHref(page, "/my-stones", /^\/bench\//)],
  instructor: async (page) => {
    const tray = await findHref(page, "/trays", /^\/trays\/[0-9a-f-]{8,}$/);
    const stone = await findHref(page, tray, /\/stones\/[0-9a-f-]{8,}$/);
    const exercise = await findHref(page, "/exercises", /^\/exercises\/[0-9a-f-]{8,}$/);
    const running = await findHref(page, "/overview", /^\/exercises\/[0-9a-f-]{8,}$/);
    const sitting = await findHref(page, running, /\/sittings\//);
    const earlier = await page
      .getByRole("link", { name: /attempt 1/ })
      .first()
      .getAttribute("href");
    if (earlier === null) throw new Error("no earlier attempt to review");
    return [
      "/overview",
      "/trays",
      "/trays/new",
      tray,
      `${tray}/edit`,
      `${tray}/stones/new`,
      stone,
      `${stone}/reference`,
      `${stone}/reference/1`,
      "/exercises",
      "/exercises/new",
      exercise,
      `${exercise}/edit`,
      sitting,
      earlier,
      "/sections",
      await findHref(page, "/sections", /^\/sections\/[0-9a-f-]{8,}$/),
    ];
  },
  director: async (page) => [
    "/program",
    "/settings",
    "/people",
    "/people/new",
    "/people/sections/new",
    await findHref(page, "/people", /^\/people\/sections\/[0-9a-f-]{8,}$/),
    "/trail",
  ],
};

for (const [login, list] of Object.entries(PAGES)) {
  test(`axe finds nothing on any page of ${login}, in light and dark, wide and narrow`, async ({
    openAs,
  }) => {
    // Many pages, each looked at twice.
    test.setTimeout(300_000);
    const wide = await openAs(login, { colorScheme: "light" });
    const addresses = await list(wide);
    const narrow = await openAs(login, { colorScheme: "dark", viewport: { width: 390, height: 844 } });
    for (const address of addresses) {
      await Promise.all([
        wide.goto(address).then(() => expectClean(wide, `${address}, light, 1440`)),
        narrow
          .goto(address)
          .then(() => expectClean(narrow, `${address}, dark, 390`))
          .then(() => expectNoSideways(narrow, address)),
      ]);
    }
  });
}

test("axe finds nothing where nobody is signed in", async ({ page }) => {
  for (const address of ["/sign-in", "/no-such-page"]) {
    await page.goto(address);
    await expectClean(page, address);
  }
});

test("both diagrams of the bench are 440 px across or more on a laptop", async ({ openAs }) => {
  const page = await openAs("student1");
  await page.goto(await findHref(page, "/my-stones", /^\/bench\//));
  for (const view of ["Crown", "Pavilion"]) {
    const diagram = page.getByRole("region", { name: `${view} view` }).getByRole("application");
    await expect(diagram.locator("canvas").first()).toBeVisible();
    expect((await diagram.boundingBox())?.width).toBeGreaterThanOrEqual(440);
  }
});
