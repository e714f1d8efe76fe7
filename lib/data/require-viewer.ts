import { cookies } from "next/headers";
import { decode } from "next-auth/jwt";
import { z } from "zod";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { findViewer } from "@/lib/data/find-viewer";
import { readEnvironment } from "@/lib/data/read-environment";
import { getSessionCookie } from "@/lib/data/session-cookie";

const SessionTokenSchema = z.object({ sub: z.string().min(1), epoch: z.int() });

/** Whoever is signed in on this request, asked of the database anew each time; null when nobody is. */
export async function findSignedInViewer(): Promise<Viewer | null> {
  const cookie = (await cookies()).get(getSessionCookie().name);
  if (cookie === undefined) return null;
  const token = await decode({ token: cookie.value, secret: readEnvironment().secret }).catch(() => null);
  const session = SessionTokenSchema.safeParse(token);
  return session.success ? findViewer(session.data.sub, session.data.epoch) : null;
}

/** Whoever is signed in on this request. Throws AppError `signed-out`. */
export async function requireViewer(): Promise<Viewer> {
  const viewer = await findSignedInViewer();
  if (viewer === null) throw new AppError("signed-out", "Sign in to go on. What was saved is still saved.");
  return viewer;
}
