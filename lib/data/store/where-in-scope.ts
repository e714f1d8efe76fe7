/** The access table's rules as where-clauses, so that a list is narrowed by the same table as a single thing. */
import type { Action } from "@/lib/access/access-table";
import { getScope } from "@/lib/access/can";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import type { Prisma } from "@/prisma/generated/client";

/**
 * The sections in which the viewer may take an action. Throws AppError as `requireRole` does; throws an Error for a
 * rule that is none of a section's (a fault of the program).
 */
export function whereSectionInScope(viewer: Viewer, action: Action): Prisma.SectionWhereInput {
  requireRole(viewer, action);
  const scope = getScope(viewer, action);
  switch (scope) {
    case "any":
      return {};
    case "taught":
      return { instructors: { some: { instructorId: viewer.userId } } };
    case "enrolled":
      return { enrolments: { some: { studentId: viewer.userId } } };
    default:
      throw new Error(`the rule "${scope}" of ${action} is not one for sections`);
  }
}
