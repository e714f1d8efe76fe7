import "server-only";
import { existsSync } from "node:fs";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { readEnvironment } from "@/lib/data/read-environment";
import { getDatabase } from "@/lib/data/store/database";
import { RoleSchema } from "@/lib/plot/staff-view";

/**
 * For whom the command line works on the database: the account of that sign-in name, or the first director where none
 * is named. Whoever may run the command line may read the database's file as it is, so no password is asked; the
 * account decides what may be done and stands in the trail. Never reached from the web. Throws AppError `not-set-up`
 * where there is no database or no director yet, `not-found` for a name that is no active account's.
 */
export async function getOperator(login: string | undefined): Promise<Viewer> {
  const { databaseUrl } = readEnvironment();
  const file = databaseUrl.replace(/^file:/, "");
  if (!existsSync(file)) {
    throw new AppError("not-set-up", "There is no database yet; nothing was written.", [
      { path: "DATABASE_URL", message: `there is no file ${file}; \`npm run up\` makes one` },
    ]);
  }
  const user = await getDatabase().user.findFirst({
    where: { active: true, ...(login === undefined ? { role: "director" } : { login }) },
    orderBy: [{ createdAt: "asc" }, { login: "asc" }],
  });
  if (user !== null) return { userId: user.id, role: RoleSchema.parse(user.role), name: user.name };
  if (login === undefined) {
    throw new AppError("not-set-up", "The database has no director yet; nothing was written.");
  }
  throw new AppError("not-found", "There is no such account; nothing was written.", [
    { path: "--as", message: `"${login}" is no active account's sign-in name` },
  ]);
}
