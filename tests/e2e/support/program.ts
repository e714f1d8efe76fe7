/** What the browser tests share: signing in without clicking, and drawing on a view with real pointer events. */
import {
  type Browser,
  type BrowserContext,
  test as base,
  expect,
  type Locator,
  type Page,
} from "@playwright/test";
import { DEMO_PASSWORD } from "@/lib/demo/demo-accounts";

export { DEMO_PASSWORD };

export interface Device {
  readonly colorScheme?: "light" | "dark";
  readonly viewport?: { width: number; height: number };
}

/** Signs in by the program's own door, without its page; gives a page of a browser of its own. */
async function signIn(
  browser: Browser,
  login: string,
  device: Device,
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ ...device, acceptDownloads: true });
  const { csrfToken } = await (await context.request.get("/api/auth/csrf")).json();
  const answer = await context.request.post("/api/auth/callback/credentials", {
    form: { csrfToken, login, password: DEMO_PASSWORD, json: "true" },
  });
  expect(answer.ok(), `sign-in of ${login}`).toBe(true);
  return { context, page: await context.newPage() };
}

interface Fixtures {
  /** A page of somebody's own, signed in; closed at the end. */
  openAs: (login: string, device?: Device) => Promise<Page>;
}

export const test = base.extend<Fixtures>({
  openAs: async ({ browser }, use) => {
    const contexts: BrowserContext[] = [];
    await use(async (login, device = {}) => {
      const { context, page } = await signIn(browser, login, device);
      contexts.push(context);
      return page;
    });
    for (const context of contexts) await context.close();
  },
});
export { expect };

/** The diagram of a view. The girdle of a round stone fills this share of its width. */
export function getView(page: Page, view: "Crown" | "Pavilion"): Locator {
  return page.getByRole("region", { name: `${view} view` }).getByRole("application");
}

/** Half of what a view at rest shows, in girdle widths: the frame that `lib/editor` gives a round stone. */
const HALF_WIDTH = 0.585;

/** Where a point of the view's frame lies on the page, px. */
export async function toPage(
  view: Locator,
  [x, y]: readonly [number, number],
): Promise<{ x: number; y: number }> {
  await view.scrollIntoViewIfNeeded();
  const box = await view.boundingBox();
  if (box === null) throw new Error("the view is not on the page");
  const perWidth = box.width / (2 * HALF_WIDTH);
  return { x: box.x + box.width / 2 + x * perWidth, y: box.y + box.height / 2 - y * perWidth };
}

/** Chooses a tool of the editor. */
export async function chooseTool(
  page: Page,
  tool: "Select" | "Dot" | "Stroke" | "Outline" | "Pan",
): Promise<void> {
  await page.getByRole("group", { name: "Tools" }).getByRole("button", { name: tool }).click();
}

/** Chooses what is drawn next, by searching for it. */
export async function chooseCharacteristic(page: Page, label: string): Promise<void> {
  await page.locator('button[aria-haspopup="listbox"]').first().click();
  await page.getByLabel("Search characteristics").fill(label);
  await page.getByRole("listbox").getByRole("option", { name: label }).first().click();
}

/** Presses once at a point. */
export async function pressAt(page: Page, view: Locator, at: readonly [number, number]): Promise<void> {
  const { x, y } = await toPage(view, at);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.up();
}

/** Draws along points in one drag. */
export async function dragAlong(
  page: Page,
  view: Locator,
  points: readonly (readonly [number, number])[],
): Promise<void> {
  const [first, ...rest] = await Promise.all(points.map((point) => toPage(view, point)));
  if (first === undefined) throw new Error("a drag needs points");
  await page.mouse.move(first.x, first.y);
  await page.mouse.down();
  for (const { x, y } of rest) await page.mouse.move(x, y, { steps: 6 });
  await page.mouse.up();
}

/** Opens the bench of a stone from the list of one's stones, begun or not. */
export async function openStone(page: Page, label: string): Promise<void> {
  const name = new RegExp(`^(Begin|Go on plotting) ${label}$`);
  await page.getByRole("button", { name }).or(page.getByRole("link", { name })).last().click();
  await page.waitForURL(/\/bench\//);
}

/** Ticks off the whole preparation card and goes to the diagram. */
export async function prepare(page: Page): Promise<void> {
  const card = page.getByRole("region", { name: "Before the first mark" });
  await expect(card.getByRole("checkbox").first()).toBeEnabled();
  for (const box of await card.getByRole("checkbox").all()) await box.check();
  await card.getByRole("button", { name: /^Start plotting/ }).click();
  await expect(getView(page, "Crown").locator("canvas").first()).toBeVisible();
}
