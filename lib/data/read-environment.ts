/** What the program takes from its environment, checked once, with safe defaults for a trial on one machine. */
import { dirname, join } from "node:path";
import { z } from "zod";
import { AppError } from "@/lib/base/app-error";

const DEFAULT_DATABASE_URL = "file:./data/loupework.db";
const SHORTEST_SECRET = 32;

const EnvironmentSchema = z.object({
  PORT: z.coerce.number().int().min(1).max(65_535).default(3000),
  DATABASE_URL: z
    .string()
    .regex(/^file:.+/, "must be the address of a SQLite file, such as file:./data/loupework.db")
    .default(DEFAULT_DATABASE_URL),
  /** Where photographs lie; beside the database when not set. */
  LOUPEWORK_FILES: z.string().optional(),
  LOUPEWORK_SECRET: z.string().min(SHORTEST_SECRET, `needs ${SHORTEST_SECRET} characters or more`).optional(),
  /** Where people reach the program: `https://…` makes the session's cookie one for secure connections only. */
  LOUPEWORK_URL: z.url({ protocol: /^https?$/ }).optional(),
  LOUPEWORK_TRIAL: z.enum(["0", "1"]).default("0"),
  /** How many proxies of one's own stand in front and add to X-Forwarded-For. */
  LOUPEWORK_PROXIES: z.coerce.number().int().min(0).max(10).default(0),
  NODE_ENV: z.string().default("development"),
});

export interface Environment {
  readonly port: number;
  readonly databaseUrl: string;
  /** The folder of the stones' photographs. */
  readonly filesFolder: string;
  /** What sessions are signed with. */
  readonly secret: string;
  readonly url: string | null;
  readonly trial: boolean;
  readonly proxies: number;
}

type Variables = Readonly<Record<string, string | undefined>>;

/** Only development goes without a secret of its own: a server that others reach is started for production. */
const DEVELOPMENT_SECRET = "development only: sessions here are worth nothing";

/** An empty variable counts as one that is not set. */
function dropEmpty(variables: Variables): Variables {
  return Object.fromEntries(Object.entries(variables).filter(([, value]) => value !== ""));
}

/**
 * Reads and checks the environment. Throws AppError `not-set-up` with a sentence that says what to set: for a value
 * that makes no sense, and for a production start without a secret of its own.
 */
export function readEnvironment(variables: Variables = process.env): Environment {
  const parsed = EnvironmentSchema.safeParse(dropEmpty(variables));
  if (!parsed.success) {
    const faults = parsed.error.issues.map(({ path, message }) => ({ path: path.join("."), message }));
    const words = faults.map(({ path, message }) => `${path}: ${message}`).join("; ");
    throw new AppError("not-set-up", `The environment is not set up: ${words}.`, faults);
  }
  const { LOUPEWORK_SECRET: secret, NODE_ENV: mode, ...rest } = parsed.data;
  if (secret === undefined && mode === "production") {
    throw new AppError(
      "not-set-up",
      `Set LOUPEWORK_SECRET to a random text of ${SHORTEST_SECRET} characters or more (for instance from \`openssl rand -hex 32\`) and start again: sessions are signed with it.`,
      [{ path: "LOUPEWORK_SECRET", message: "is not set" }],
    );
  }
  return {
    port: rest.PORT,
    databaseUrl: rest.DATABASE_URL,
    filesFolder:
      rest.LOUPEWORK_FILES ?? join(dirname(rest.DATABASE_URL.replace(/^file:/, "")), "loupework-files"),
    secret: secret ?? DEVELOPMENT_SECRET,
    url: rest.LOUPEWORK_URL ?? null,
    trial: rest.LOUPEWORK_TRIAL === "1",
    proxies: rest.LOUPEWORK_PROXIES,
  };
}
