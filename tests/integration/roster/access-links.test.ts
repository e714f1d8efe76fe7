/** One-time links: made once, used once, and worth nothing in the database that keeps them. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findViewer } from "@/lib/data/find-viewer";
import { getDatabase } from "@/lib/data/store/database";
import { createAccessLinks } from "@/lib/workflows/create-access-links";
import { readAccessLink, redeemAccessLink } from "@/lib/workflows/redeem-access-link";
import { setPersonActive } from "@/lib/workflows/set-person-active";
import { signIn } from "@/lib/workflows/sign-in";
import { countChanges } from "@/tests/access/count-changes";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { buildSchool, makePerson, type School } from "@/tests/support/school";

let database: TestDatabase;
let school: School;
beforeEach(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterEach(() => database.remove());

const password = "a new long password";
let address = 0;
/** Each test from an address of its own: failures are counted by it. */
const nextAddress = () => `10.0.0.${++address}`;

async function makeLink(userId: string) {
  const [link] = await createAccessLinks(school.director, { userIds: [userId] });
  if (link === undefined) throw new Error("no link was made");
  return link;
}

describe("a link", () => {
  it("invites who has no password, sets one once, and is kept only as a hash", async () => {
    const { userId } = await makePerson("newcomer", "New Comer", "student");
    const link = await makeLink(userId);
    expect(link).toMatchObject({ kind: "invitation", login: "newcomer" });
    const rows = JSON.stringify(await getDatabase().accessLink.findMany());
    expect(rows).not.toContain(link.token);
    const from = nextAddress();
    expect(await readAccessLink(link.token, from)).toEqual({
      name: "New Comer",
      login: "newcomer",
      kind: "invitation",
    });
    expect(await redeemAccessLink({ token: link.token, password }, from)).toEqual({ login: "newcomer" });
    expect(await signIn({ login: "newcomer", password, address: "x" })).toMatchObject({ userId });
    for (const use of [
      () => readAccessLink(link.token, from),
      () => redeemAccessLink({ token: link.token, password: "another password" }, from),
    ]) {
      await expect(use()).rejects.toMatchObject({ code: "not-found" });
    }
    const actions = await getDatabase().trailEntry.findMany({ where: { subjectId: userId } });
    expect(actions.map(({ action }) => action)).toEqual(["invite-person", "accept-invitation"]);
  });

  it("resets a password and ends the sessions; a newer link takes the older one's place", async () => {
    const { userId } = school.ben;
    const old = await makeLink(userId);
    const link = await makeLink(userId);
    expect(link.kind).toBe("reset");
    const from = nextAddress();
    await expect(readAccessLink(old.token, from)).rejects.toMatchObject({ code: "not-found" });
    expect(await findViewer(userId, 1)).not.toBeNull();
    await redeemAccessLink({ token: link.token, password }, from);
    expect(await findViewer(userId, 1)).toBeNull();
  });

  it("reads the same where it is wrong, too old, or of an account that is closed, and then writes nothing", async () => {
    const { userId } = school.ben;
    const late = await makeLink(userId);
    await getDatabase().accessLink.updateMany({ data: { expiresAt: new Date(Date.now() - 1) } });
    const closed = await makeLink(school.ada.userId);
    await setPersonActive(school.director, { userId: school.ada.userId, active: false });
    const from = nextAddress();
    const before = await countChanges();
    const messages = new Set<string>();
    for (const token of [late.token, closed.token, "x".repeat(43), "../../etc", ""]) {
      const thrown = await redeemAccessLink({ token, password }, from).catch((error: Error) => error);
      messages.add((thrown as Error).message);
    }
    expect([...messages]).toEqual([expect.stringMatching(/does not work any more/)]);
    expect(await countChanges()).toBe(before);
  });

  it("asks for a password that is long enough, and is not used up by one that is not", async () => {
    const link = await makeLink(school.ben.userId);
    const from = nextAddress();
    await expect(redeemAccessLink({ token: link.token, password: "short" }, from)).rejects.toMatchObject({
      code: "bad-input",
    });
    await redeemAccessLink({ token: link.token, password }, from);
  });

  it("is not looked for any more after many that did not work", async () => {
    const link = await makeLink(school.ben.userId);
    const from = nextAddress();
    for (let tries = 0; tries < 60; tries += 1) await readAccessLink("y".repeat(43), from).catch(() => null);
    await expect(readAccessLink(link.token, from)).rejects.toMatchObject({ code: "too-many-attempts" });
    expect(await readAccessLink(link.token, nextAddress())).toMatchObject({ login: "ben" });
  });

  it("is made by an instructor for students of sections that they teach, and for nobody else", async () => {
    const { iris, otto, ada, cyd, director } = school;
    expect(await createAccessLinks(iris, { userIds: [ada.userId] })).toHaveLength(1);
    for (const userId of [cyd.userId, otto.userId, iris.userId, director.userId]) {
      await expect(createAccessLinks(iris, { userIds: [userId] })).rejects.toMatchObject({
        code: "not-found",
      });
    }
    const before = await countChanges();
    await expect(createAccessLinks(iris, { userIds: [ada.userId, cyd.userId] })).rejects.toMatchObject({
      code: "not-found",
    });
    // Rolled back: what was begun for the first is counted, and gone.
    expect(await countChanges()).toBeGreaterThanOrEqual(before);
    expect(await getDatabase().accessLink.count({ where: { endedAt: null } })).toBe(1);
  });
});
