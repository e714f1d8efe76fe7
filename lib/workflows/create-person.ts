import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { LoginSchema, PasswordSchema, PersonNameSchema } from "@/lib/plot/account-input";
import { parseInput } from "@/lib/plot/parse-input";
import { type Role, RoleSchema } from "@/lib/plot/staff-view";
import { hashPassword } from "@/lib/workflows/hash-password";

const InputSchema = z.strictObject({
  login: LoginSchema,
  name: PersonNameSchema,
  role: RoleSchema,
  password: PasswordSchema,
  /** Sections that a student is enrolled in, or that an instructor teaches. */
  sectionIds: z.array(z.string()).max(100).default([]),
});

async function joinSections(
  transaction: Transaction,
  userId: string,
  role: Role,
  sectionIds: readonly string[],
): Promise<void> {
  const ids = [...new Set(sectionIds)];
  if ((await transaction.section.count({ where: { id: { in: ids } } })) !== ids.length) {
    throw new AppError("bad-input", "One of the sections is not there.", [
      { path: "sectionIds", message: "names a section that is not there" },
    ]);
  }
  if (role === "student") {
    await transaction.enrolment.createMany({
      data: ids.map((sectionId) => ({ sectionId, studentId: userId })),
    });
  } else if (role === "instructor") {
    await transaction.sectionInstructor.createMany({
      data: ids.map((sectionId) => ({ sectionId, instructorId: userId })),
    });
  }
}

/** Makes an account. Throws AppError `not-allowed`, `bad-input`, or `conflict` for a sign-in name that is taken. */
export async function createPerson(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ userId: string }> {
  requireRole(viewer, "manage-people");
  const { login, name, role, password, sectionIds } = parseInput(InputSchema, input);
  const passwordHash = await hashPassword(password);
  return runInTransaction(async (transaction) => {
    if ((await transaction.user.findUnique({ where: { login } })) !== null) {
      throw new AppError("conflict", `The sign-in name “${login}” is taken.`, [
        { path: "login", message: "is taken" },
      ]);
    }
    const user = await transaction.user.create({ data: { login, name, role, passwordHash } });
    await joinSections(transaction, user.id, role, sectionIds);
    await writeTrail(transaction, viewer, {
      action: "create-person",
      subjectKind: "person",
      subjectId: user.id,
      detail: role,
    });
    return { userId: user.id };
  });
}
