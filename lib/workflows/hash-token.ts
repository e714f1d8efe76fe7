import { createHash } from "node:crypto";

/** SHA-256 of a link's token, hex. The token is 256 random bits, so that its hash needs neither salt nor cost. */
export function hashToken(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}
