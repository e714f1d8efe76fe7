import { z } from "zod";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { RoleSchema } from "@/lib/plot/staff-view";

const RowSchema = z.tuple([z.object({ role: RoleSchema, name: z.string() })]);

/**
 * The person whose session this is, or null when the account is gone or inactive, or when the session was begun
 * before the account's sessions were ended (`epoch` is the one that the session was begun with). Asked with every
 * request, so in a statement of its own.
 */
export async function findViewer(userId: string, epoch: number): Promise<Viewer | null> {
  const rows = await getDatabase().$queryRaw<unknown[]>`
    SELECT "role", "name" FROM "User" WHERE "id" = ${userId} AND "active" AND "sessionEpoch" = ${epoch}`;
  if (rows.length === 0) return null;
  const [{ role, name }] = RowSchema.parse(rows);
  return { userId, role, name };
}
