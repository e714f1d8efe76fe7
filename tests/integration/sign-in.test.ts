/** Accounts: sign-in through next-auth's own route, its limits, and what ends a session. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { findSignedInViewer, requireViewer } from "@/lib/data/require-viewer";
import { getDatabase } from "@/lib/data/store/database";
import { checkPassword, DECOY_HASH } from "@/lib/workflows/check-password";
import { createPerson } from "@/lib/workflows/create-person";
import { findClientAddress } from "@/lib/workflows/find-client-address";
import { HASH_COST, hashPassword } from "@/lib/workflows/hash-password";
import { resetPassword } from "@/lib/workflows/reset-password";
import { setPassword } from "@/lib/workflows/set-password";
import { setPersonActive } from "@/lib/workflows/set-person-active";
import { signIn } from "@/lib/workflows/sign-in";
import { beSignedIn } from "@/tests/support/cookie-jar";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { makePerson, PASSWORD } from "@/tests/support/school";

vi.mock("next/headers", async () => ({ cookies: (await import("@/tests/support/cookie-jar")).cookies }));

let database: TestDatabase;
let director: Awaited<ReturnType<typeof makePerson>>;
let ada: Awaited<ReturnType<typeof makePerson>>;
beforeEach(async () => {
  database = await createTestDatabase();
  const hash = await hashPassword(PASSWORD);
  director = await makePerson("dora", "Dora Director", "director", hash);
  ada = await makePerson("ada", "Ada Student", "student", hash);
});
afterEach(async () => {
  vi.useRealTimers();
  await database.remove();
});

const attempt = (login: string, password: string, address = "192.0.2.1") =>
  signIn({ login, password, address });

describe("signing in", () => {
  it("takes the right pair, whatever the case of the name", async () => {
    expect(await attempt(" ADA ", PASSWORD)).toEqual({ userId: ada.userId, epoch: 1, name: "Ada Student" });
    const user = await getDatabase().user.findUniqueOrThrow({ where: { id: ada.userId } });
    expect(user.lastSignInAt).not.toBeNull();
  });

  it("reads the same for a wrong password, an unknown and an inactive account", async () => {
    await getDatabase().user.update({ where: { id: ada.userId }, data: { active: false } });
    expect(await attempt("ada", PASSWORD)).toBeNull();
    expect(await attempt("dora", "a wrong password")).toBeNull();
    expect(await attempt("nobody", PASSWORD)).toBeNull();
  });

  it("does the same work for an account that is not there", async () => {
    // The encoded form names algorithm and cost: RFC 9106 and the PHC string format.
    const cost = `$argon2id$v=19$m=${HASH_COST.memoryCost},t=${HASH_COST.timeCost},p=${HASH_COST.parallelism}$`;
    expect(DECOY_HASH.startsWith(cost)).toBe(true);
    expect((await hashPassword(PASSWORD)).startsWith(cost)).toBe(true);
    expect(DECOY_HASH).toHaveLength((await hashPassword(PASSWORD)).length);
    expect(await checkPassword(PASSWORD, null)).toBe(false);
  });

  it("stops after ten failures of an account within a quarter of an hour, known or not", async () => {
    for (const login of ["ada", "nobody"]) {
      for (let i = 0; i < 10; i += 1) expect(await attempt(login, "wrong", `192.0.2.${i}`)).toBeNull();
      await expect(attempt(login, PASSWORD, "198.51.100.1")).rejects.toMatchObject({
        code: "too-many-attempts",
      });
    }
    expect(await attempt("dora", PASSWORD)).not.toBeNull();
    vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + 16 * 60_000 });
    expect(await attempt("ada", PASSWORD)).not.toBeNull();
  });

  it("stops after a hundred failures of an address, over whatever accounts", async () => {
    await getDatabase().signInAttempt.createMany({
      data: Array.from({ length: 100 }, (_, i) => ({
        login: `guess-${i}`,
        address: "192.0.2.9",
        succeeded: false,
        at: new Date(),
      })),
    });
    await expect(attempt("ada", PASSWORD, "192.0.2.9")).rejects.toMatchObject({ code: "too-many-attempts" });
    expect(await attempt("ada", PASSWORD, "192.0.2.10")).not.toBeNull();
  });

  it("lets no more through when many come at once", async () => {
    const outcomes = await Promise.allSettled(Array.from({ length: 30 }, () => attempt("ada", "wrong")));
    expect(outcomes.filter(({ status }) => status === "fulfilled")).toHaveLength(10);
  });

  it("forgets attempts after a day", async () => {
    await attempt("ada", "wrong");
    vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + 25 * 3_600_000 });
    await attempt("dora", PASSWORD);
    expect(await getDatabase().signInAttempt.count()).toBe(1);
  });
});

describe("the address of a request", () => {
  const peer = "x-loupework-peer";

  it("is the connection's other end where no proxy stands in front, whatever the client says", () => {
    const headers = { [peer]: "192.0.2.1", "x-forwarded-for": "203.0.113.9" };
    expect(findClientAddress(headers, 0)).toBe("192.0.2.1");
    expect(findClientAddress({}, 0)).toBe("unknown");
  });

  it("is what one's own proxy heard from, not what stands before it", () => {
    const headers = { [peer]: "127.0.0.1", "x-forwarded-for": "203.0.113.9, 198.51.100.2, 10.0.0.1" };
    expect(findClientAddress(headers, 1)).toBe("10.0.0.1");
    expect(findClientAddress(headers, 2)).toBe("198.51.100.2");
    expect(findClientAddress({ [peer]: "127.0.0.1" }, 1)).toBe("127.0.0.1");
  });
});

describe("a session", () => {
  it("gives the viewer, by the account as it is now", async () => {
    await beSignedIn(ada);
    expect(await requireViewer()).toEqual({ userId: ada.userId, role: "student", name: "Ada Student" });
    await getDatabase().user.update({ where: { id: ada.userId }, data: { role: "instructor" } });
    expect((await requireViewer()).role).toBe("instructor");
  });

  it.each([
    [
      "a change of one's own password",
      () => setPassword(ada, { current: PASSWORD, next: "quite another one" }),
    ],
    [
      "a new password from a director",
      () => resetPassword(director, { userId: ada.userId, password: "quite another one" }),
    ],
    ["deactivation", () => setPersonActive(director, { userId: ada.userId, active: false })],
    [
      "deactivation, also once it is taken back",
      async () => {
        await setPersonActive(director, { userId: ada.userId, active: false });
        await setPersonActive(director, { userId: ada.userId, active: true });
      },
    ],
  ])("ends with %s", async (_what, end) => {
    await beSignedIn(ada);
    expect(await findSignedInViewer()).not.toBeNull();
    await end();
    expect(await findSignedInViewer()).toBeNull();
    await expect(requireViewer()).rejects.toMatchObject({ code: "signed-out" });
  });

  it("is not worth anything under another secret", async () => {
    vi.stubEnv("LOUPEWORK_SECRET", "one secret of thirty-two characters or more");
    await beSignedIn(ada);
    vi.stubEnv("LOUPEWORK_SECRET", "another secret of thirty-two characters!");
    expect(await findSignedInViewer()).toBeNull();
    vi.unstubAllEnvs();
  });
});

describe("an account", () => {
  it("is refused a password that is too short, a name that is taken, and a sign-in name that is none", async () => {
    const person = { login: "new", name: "New", role: "student", password: PASSWORD } as const;
    await expect(createPerson(director, { ...person, password: "short" })).rejects.toMatchObject({
      code: "bad-input",
      faults: [{ path: "password" }],
    });
    await expect(createPerson(director, { ...person, login: "ADA" })).rejects.toMatchObject({
      code: "conflict",
    });
    await expect(createPerson(director, { ...person, login: "a b" })).rejects.toMatchObject({
      code: "bad-input",
    });
  });

  it("keeps its password only as a hash", async () => {
    await createPerson(director, {
      login: "new",
      name: "New",
      role: "student",
      password: "a password to find",
    });
    const everything = JSON.stringify(await getDatabase().user.findMany());
    expect(everything).not.toContain("a password to find");
    expect(await attempt("new", "a password to find")).not.toBeNull();
  });

  it("cannot shut itself out", async () => {
    const shut = setPersonActive(director, { userId: director.userId, active: false });
    await expect(shut).rejects.toMatchObject({ code: "conflict" });
  });

  it("is refused a change of password without the one in force", async () => {
    const change = setPassword(ada, { current: "not this one", next: "quite another one" });
    await expect(change).rejects.toMatchObject({ code: "bad-input", faults: [{ path: "current" }] });
  });
});
