/** The headers that every page and route is answered with. */
import { NextRequest } from "next/server";
import { afterEach, describe, expect, it, vi } from "vitest";
import { proxy } from "@/proxy";

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
