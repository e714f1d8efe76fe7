/** The cookies of a request that a test makes, for `vi.mock("next/headers")`. */
import { encode } from "next-auth/jwt";
import type { Viewer } from "@/lib/access/viewer";
import { readEnvironment } from "@/lib/data/read-environment";
import { getSessionCookie } from "@/lib/data/session-cookie";

const jar = new Map<string, string>();

/** What the framework's `cookies()` gives. */
export async function cookies() {
  return {
    get: (name: string) => {
      const value = jar.get(name);
      return value === undefined ? undefined : { name, value };
    },
  };
}

/** The next requests come from this person's browser; from nobody's for null. */
export async function beSignedIn(viewer: Pick<Viewer, "userId"> | null, epoch = 1): Promise<void> {
  jar.clear();
  if (viewer === null) return;
  const token = await encode({ token: { sub: viewer.userId, epoch }, secret: readEnvironment().secret });
  jar.set(getSessionCookie().name, token);
}

/** Puts any text in the place of the session's token. */
export function setSessionToken(token: string): void {
  jar.set(getSessionCookie().name, token);
}
