import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type PersonRow, PersonRowSchema } from "@/lib/plot/staff-view";

/** Everybody with an account, by name, with the sections that they are enrolled in or teach. */
export async function listPeople(viewer: Viewer): Promise<PersonRow[]> {
  requireRole(viewer, "manage-people");
  const sectionName = { section: { select: { name: true } } } as const;
  const users = await getDatabase().user.findMany({
    orderBy: [{ name: "asc" }, { login: "asc" }],
    include: { teaches: { select: sectionName }, enrolments: { select: sectionName } },
  });
  return users.map((user) =>
    PersonRowSchema.parse({
      userId: user.id,
      login: user.login,
      name: user.name,
      role: user.role,
      active: user.active,
      isInvited: user.passwordHash === "-" && user.erasedAt === null,
      isErased: user.erasedAt !== null,
      sections: [...user.teaches, ...user.enrolments].map(({ section }) => section.name).sort(),
      lastSignInAt: user.lastSignInAt?.toISOString() ?? null,
    }),
  );
}
