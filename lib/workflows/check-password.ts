import "server-only";
import { verify } from "@node-rs/argon2";

/**
 * Stands in for the hash of an account that does not exist, at the cost of `hashPassword`, so that the time taken
 * tells nothing. It is the hash of a random text that nobody kept.
 */
export const DECOY_HASH =
  "$argon2id$v=19$m=19456,t=2,p=1$pZLOiMIS+NJiSQ+W/0XIbQ$DTVtGgHY7zz3emrzniZnyZgWhuRnwARYuGHQO9ObQ00";

/** Whether a password is the one that was hashed; without a hash the same work is done and the answer is no. */
export async function checkPassword(password: string, passwordHash: string | null): Promise<boolean> {
  const same = await verify(passwordHash ?? DECOY_HASH, password.normalize("NFC"));
  return same && passwordHash !== null;
}
