import type { NextAuthOptions } from "next-auth";
import Credentials from "next-auth/providers/credentials";
import { z } from "zod";
import { isAppError } from "@/lib/base/app-error";
import { readEnvironment } from "@/lib/data/read-environment";
import { getSessionCookie, SESSION_SECONDS } from "@/lib/data/session-cookie";
import { findClientAddress } from "@/lib/workflows/find-client-address";
import { signIn } from "@/lib/workflows/sign-in";

const CredentialsSchema = z.object({ login: z.string(), password: z.string() });

/** What the session's token is made of: who, and the epoch that ends it. The role is asked of the database. */
const UserSchema = z.object({ id: z.string(), epoch: z.int() });

/**
 * Sign-in for next-auth: a name and a password against the accounts, a signed token in an http-only cookie. The
 * refusal of too many tries is told in words; every other refusal reads the same.
 */
export function buildAuthOptions(): NextAuthOptions {
  const cookie = getSessionCookie();
  return {
    secret: readEnvironment().secret,
    session: { strategy: "jwt", maxAge: SESSION_SECONDS },
    pages: { signIn: "/sign-in", error: "/sign-in" },
    useSecureCookies: cookie.secure,
    cookies: {
      sessionToken: {
        name: cookie.name,
        options: { httpOnly: true, sameSite: "lax", path: "/", secure: cookie.secure },
      },
    },
    providers: [
      Credentials({
        credentials: { login: {}, password: {} },
        authorize: async (given, request) => {
          const credentials = CredentialsSchema.safeParse(given);
          if (!credentials.success) return null;
          const address = findClientAddress(request.headers ?? {}, readEnvironment().proxies);
          try {
            const signedIn = await signIn({ ...credentials.data, address });
            return signedIn === null ? null : { id: signedIn.userId, epoch: signedIn.epoch };
          } catch (thrown) {
            if (isAppError(thrown, "too-many-attempts")) throw thrown;
            console.error("sign-in failed", thrown);
            throw new Error("Signing in did not work just now. Try again in a moment.");
          }
        },
      }),
    ],
    callbacks: {
      jwt: ({ token, user }) => {
        const fresh = UserSchema.safeParse(user);
        return fresh.success ? { sub: fresh.data.id, epoch: fresh.data.epoch } : token;
      },
      // The session endpoint answers a browser: it says that somebody is signed in, and nothing of whom.
      session: ({ session }) => ({ expires: session.expires }),
    },
  };
}
