import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { RoleSchema } from "@/lib/plot/staff-view";

/**
 * The person whose session this is, or null when the account is gone or inactive, or when the session was begun
 * before the account's sessions were ended (`epoch` is the one that the session was begun with).
 */
export async function findViewer(userId: string, epoch: number): Promise<Viewer | null> {
  const user = await getDatabase().user.findUnique({
    where: { id: userId },
    select: { id: true, active: true, sessionEpoch: true, role: true, name: true },
  });
  if (user === null || !user.active || user.sessionEpoch !== epoch) return null;
  return { userId: user.id, role: RoleSchema.parse(user.role), name: user.name };
}
