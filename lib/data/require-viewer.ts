import { cookies } from "next/headers";
import { decode } from "next-auth/jwt";
import { z } from "zod";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { findViewer } from "@/lib/data/find-viewer";
import { readEnvironment } from "@/lib/data/read-environment";
import { getSessionCookie } from "@/lib/data/session-cookie";

/** `exp` in seconds since 1970. */
const SessionTokenSchema = z.object({ sub: z.string().min(1), epoch: z.int(), exp: z.number() });
type SessionToken = z.infer<typeof SessionTokenSchema>;

/** Tokens that were opened lately: a bench shows its own with every step, and to open it costs more than to look it up. */
const opened = new Map<string, SessionToken>();
const MOST_OPENED = 2000;

/** What a token holds; null when it is none or is too old. */
async function openToken(sessionToken: string): Promise<SessionToken | null> {
  let session = opened.get(sessionToken);
  if (session === undefined) {
    const token = await decode({ token: sessionToken, secret: readEnvironment().secret }).catch(() => null);
    session = SessionTokenSchema.safeParse(token).data;
    if (session === undefined) return null;
    if (opened.size >= MOST_OPENED) opened.delete(opened.keys().next().value ?? "");
    opened.set(sessionToken, session);
  }
  return session.exp * 1000 > Date.now() ? session : null;
}

/** The person of a session's token, asked of the database each time; null when it is none, is too old or was ended. */
async function findTokenViewer(sessionToken: string): Promise<Viewer | null> {
  const session = await openToken(sessionToken);
  return session === null ? null : findViewer(session.sub, session.epoch);
}

async function findSessionToken(): Promise<string | null> {
  return (await cookies()).get(getSessionCookie().name)?.value ?? null;
}

/** Whoever is signed in on this request, asked of the database anew each time; null when nobody is. */
export async function findSignedInViewer(): Promise<Viewer | null> {
  const token = await findSessionToken();
  return token === null ? null : findTokenViewer(token);
}

/** Whoever is signed in on this request. Throws AppError `signed-out`. */
export async function requireViewer(): Promise<Viewer> {
  const viewer = await findSignedInViewer();
  if (viewer === null) throw new AppError("signed-out", "Sign in to go on. What was saved is still saved.");
  return viewer;
}

/**
 * Whoever is signed in on this request, and a question that can be asked again while the answer is still going on:
 * whether that session still holds, with the same role. Throws AppError `signed-out`.
 */
export async function requireLastingViewer(): Promise<{
  viewer: Viewer;
  isStillSignedIn: () => Promise<boolean>;
}> {
  const token = (await findSessionToken()) ?? "";
  const viewer = await requireViewer();
  return { viewer, isStillSignedIn: async () => (await findTokenViewer(token))?.role === viewer.role };
}
