import { readEnvironment } from "@/lib/data/read-environment";

/** A session ends this long after sign-in, seconds: a school day. */
export const SESSION_SECONDS = 12 * 60 * 60;

export interface SessionCookie {
  readonly name: string;
  /** Over https alone; the name then carries the prefix by which browsers hold it to that. */
  readonly secure: boolean;
}

/** The session's cookie, by the address that people reach the program at. */
export function getSessionCookie(): SessionCookie {
  const secure = readEnvironment().url?.startsWith("https:") ?? false;
  return { name: secure ? "__Host-loupework-session" : "loupework-session", secure };
}
