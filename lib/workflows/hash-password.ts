import "server-only";
import { hash } from "@node-rs/argon2";

/** Argon2id (RFC 9106) with the memory, passes and lanes of OWASP's password storage cheat sheet (from memory). */
export const HASH_COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** A password's hash in its encoded form, with salt and cost in it. */
export async function hashPassword(password: string): Promise<string> {
  return hash(password.normalize("NFC"), HASH_COST);
}
