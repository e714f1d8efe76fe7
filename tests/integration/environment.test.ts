/** What the program takes from its environment, and that a production start without a secret refuses. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { readEnvironment } from "@/lib/data/read-environment";
import { getSessionCookie } from "@/lib/data/session-cookie";

const SECRET = "0123456789abcdef0123456789abcdef";

describe("the environment", () => {
  it("has safe defaults", () => {
    expect(readEnvironment({})).toMatchObject({
      port: 3000,
      databaseUrl: "file:./data/loupework.db",
      url: null,
      trial: false,
      proxies: 0,
    });
  });

  it("refuses a production start without a secret of its own, and says what to set", () => {
    expect(() => readEnvironment({ NODE_ENV: "production" })).toThrow(/Set LOUPEWORK_SECRET/);
    expect(() => readEnvironment({ NODE_ENV: "production", LOUPEWORK_SECRET: "" })).toThrow(
      /Set LOUPEWORK_SECRET/,
    );
    expect(() => readEnvironment({ NODE_ENV: "production", LOUPEWORK_SECRET: "short" })).toThrow(
      /LOUPEWORK_SECRET: needs 32/,
    );
    expect(readEnvironment({ NODE_ENV: "production", LOUPEWORK_SECRET: SECRET }).secret).toBe(SECRET);
  });

  it.each([
    ["PORT", "port"],
    ["DATABASE_URL", "postgres://elsewhere"],
    ["LOUPEWORK_URL", "ftp://elsewhere"],
    ["LOUPEWORK_TRIAL", "yes"],
    ["LOUPEWORK_PROXIES", "-1"],
  ])("refuses %s=%s by name", (name, value) => {
    expect(() => readEnvironment({ [name]: value })).toThrow(new RegExp(name));
  });

  it("never repeats a secret in what it says", () => {
    try {
      readEnvironment({ LOUPEWORK_SECRET: "a-short-secret", PORT: "no" });
      expect.unreachable();
    } catch (thrown) {
      expect(String(thrown)).not.toContain("a-short-secret");
    }
  });
});

describe("the session's cookie", () => {
  it("is one for secure connections where the address is https", () => {
    vi.stubEnv("LOUPEWORK_URL", "https://loupework.test");
    expect(getSessionCookie()).toEqual({ name: "__Host-loupework-session", secure: true });
    vi.stubEnv("LOUPEWORK_URL", "http://127.0.0.1:3000");
    expect(getSessionCookie()).toEqual({ name: "loupework-session", secure: false });
    vi.unstubAllEnvs();
  });
});

describe("a start", () => {
  it("that is not set up ends with status 1 and the sentence", () => {
    const ended = spawnSync(
      process.execPath,
      [
        "--conditions=react-server",
        "--import",
        "tsx",
        "--eval",
        'import("@/lib/workflows/start-server").then((m) => m.startServer())',
      ],
      {
        cwd: join(import.meta.dirname, "../.."),
        encoding: "utf8",
        env: { PATH: process.env.PATH, NODE_ENV: "production" },
      },
    );
    expect(ended.status).toBe(1);
    expect(ended.stderr).toContain("Set LOUPEWORK_SECRET");
  });
});
