/** The texts of an account as they are taken in. */
import { z } from "zod";

/** A sign-in name: small letters, digits, and `.`, `-`, `_` between them. Also names a student's plots in files. */
export const LoginSchema = z
  .string()
  .trim()
  .toLowerCase()
  .min(2, "needs two characters or more")
  .max(64)
  .regex(/^[a-z0-9](?:[a-z0-9._-]*[a-z0-9])?$/, "may hold a to z, digits, and . - _ between them");

/** A person's name as it is shown. */
export const PersonNameSchema = z
  .string()
  .trim()
  .min(1, "must not be empty")
  .max(120)
  .regex(/^[^\p{C}]+$/u, "must be printable");

/** Length alone is asked of a password. */
export const PasswordSchema = z.string().min(10, "needs ten characters or more").max(200);
