/** The headers that every page and route is answered with. */
import { NextRequest } from "next/server";
import { afterEach, describe, expect, it, vi } from "vitest";
import { answerBare } from "@/app/api/answer-json";
import { getFixedHeaders } from "@/app/api/fixed-headers";
import { AppError } from "@/lib/base/app-error";
import { config, proxy } from "@/proxy";

const answer = () => proxy(new NextRequest("http://loupework.test/my-stones")).headers;
const policyOf = (headers: Headers) => headers.get("content-security-policy") ?? "";

afterEach(() => vi.unstubAllEnvs());

describe("the content security policy", () => {
  it("names no other host, and lets no script run that is not ours", () => {
    const policy = policyOf(answer());
    expect(policy).not.toMatch(/https?:|\*/);
    const scripts = policy.split("; ").find((rule) => rule.startsWith("script-src"));
    expect(scripts).toMatch(/^script-src 'self' 'nonce-[A-Za-z0-9+/=]{20,}'$/);
    for (const rule of [
      "default-src 'self'",
      "object-src 'none'",
      "base-uri 'self'",
      "frame-ancestors 'none'",
    ]) {
      expect(policy.split("; ")).toContain(rule);
    }
  });

  it("has a nonce of its own for each answer", () => {
    expect(new Set([1, 2, 3, 4].map(() => policyOf(answer()))).size).toBe(4);
  });
});

describe("the other headers", () => {
  it("keep an answer from being framed, guessed at, or told of elsewhere", () => {
    const headers = answer();
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    expect(headers.get("x-frame-options")).toBe("DENY");
    expect(headers.get("referrer-policy")).toBe("same-origin");
  });

  it("hold a browser to https only where the program is reached by it", () => {
    expect(answer().has("strict-transport-security")).toBe(false);
    vi.stubEnv("LOUPEWORK_URL", "https://loupework.test");
    expect(answer().has("strict-transport-security")).toBe(true);
  });
});

describe("what passes by", () => {
  const passes = (path: string) => !new RegExp(`^${config.matcher}$`).test(path);

  it("is what every bench sends with each step, and nothing else of the program's", () => {
    expect(["/api/sittings/a-b/events", "/api/sittings/a-b/presence"].map(passes)).toEqual([true, true]);
    for (const path of [
      "/",
      "/my-stones",
      "/api/watch",
      "/api/sittings/a/notes",
      "/api/sittings/a/events/b",
      "/bench/api/sittings/a/events",
    ]) {
      expect(passes(path)).toBe(false);
    }
  });

  it("is answered with the same guard, a refusal too", async () => {
    const answers = await Promise.all([
      answerBare(async () => ({})),
      answerBare(() => Promise.reject(new AppError("not-found", "There is none."))),
    ]);
    for (const { headers } of answers) {
      expect(headers.get("cache-control")).toBe("no-store");
      for (const [name, value] of Object.entries(getFixedHeaders())) expect(headers.get(name)).toBe(value);
      expect(policyOf(headers)).toBe("default-src 'none'; frame-ancestors 'none'");
    }
  });
});
