/** One-time links by which somebody sets a password. */
import { z } from "zod";

export const LINK_KINDS = ["invitation", "reset"] as const;

/** A link as it is shown once to whoever made it: the token is kept nowhere. */
export const MadeLinkSchema = z.strictObject({
  userId: z.string(),
  name: z.string(),
  login: z.string(),
  kind: z.enum(LINK_KINDS),
  token: z.string(),
  expiresAt: z.iso.datetime(),
});
export type MadeLink = z.infer<typeof MadeLinkSchema>;

/** Whose password a link sets, told to whoever holds it. */
export const LinkHolderSchema = z.strictObject({
  name: z.string(),
  login: z.string(),
  kind: z.enum(LINK_KINDS),
});
export type LinkHolder = z.infer<typeof LinkHolderSchema>;

/** 32 random bytes in base64url. */
export const LinkTokenSchema = z.string().regex(/^[A-Za-z0-9_-]{43}$/, "is no link of this program");
