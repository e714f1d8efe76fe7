"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { AppError } from "@/lib/base/app-error";
import { requireViewer } from "@/lib/data/require-viewer";
import type { MadeLink } from "@/lib/plot/access-link";
import { LoginSchema, PasswordSchema, PersonNameSchema } from "@/lib/plot/account-input";
import type { RosterPlan } from "@/lib/plot/roster";
import { RoleSchema } from "@/lib/plot/staff-view";
import { createAccessLinks } from "@/lib/workflows/create-access-links";
import { createPerson } from "@/lib/workflows/create-person";
import { createSection } from "@/lib/workflows/create-section";
import { enrolStudents } from "@/lib/workflows/enrol-students";
import { erasePerson } from "@/lib/workflows/erase-person";
import { importRoster } from "@/lib/workflows/import-roster";
import { planRosterImport } from "@/lib/workflows/plan-roster-import";
import { resetPassword } from "@/lib/workflows/reset-password";
import { setPersonActive } from "@/lib/workflows/set-person-active";

const PersonInputSchema = z.strictObject({
  name: PersonNameSchema,
  login: LoginSchema,
  role: RoleSchema,
  password: PasswordSchema,
  sectionIds: z.array(z.string()).max(100),
});
const ActiveInputSchema = z.strictObject({ userId: z.string(), active: z.boolean() });
const PasswordInputSchema = z.strictObject({ userId: z.string(), password: PasswordSchema });
const SectionInputSchema = z.strictObject({
  name: z.string().trim().min(1).max(120),
  term: z.string().trim().min(1).max(60),
  instructorIds: z.array(z.string()).max(50),
});

const FILE_LIMIT = 20;

/** The files of a form, as bytes; their sizes are held against the limits by the reader. */
async function readForm(form: unknown) {
  if (!(form instanceof FormData)) throw new AppError("bad-input", "No file was sent.");
  const given = form.getAll("files").filter((one) => one instanceof File);
  const files = await Promise.all(
    given
      .slice(0, FILE_LIMIT)
      .map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
  );
  return { files, termOfNew: z.string().parse(form.get("termOfNew") ?? "") };
}

export async function planRosterAction(form: unknown): Promise<ActionResult<RosterPlan>> {
  return toActionResult(async () => planRosterImport(await requireViewer(), await readForm(form)));
}

export async function importRosterAction(
  form: unknown,
  fingerprint: unknown,
): Promise<ActionResult<{ newUserIds: string[]; changed: number; sections: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const input = { ...(await readForm(form)), fingerprint: z.string().parse(fingerprint) };
    const done = await importRoster(viewer, input);
    revalidatePath("/people", "layout");
    return done;
  });
}

export async function createLinksAction(userIds: unknown): Promise<ActionResult<MadeLink[]>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    return createAccessLinks(viewer, { userIds: z.array(z.string()).parse(userIds) });
  });
}

export async function erasePersonAction(userId: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await erasePerson(viewer, { userId: z.string().parse(userId) });
    revalidatePath("/people", "layout");
    return undefined;
  });
}

export async function createPersonAction(input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await createPerson(viewer, PersonInputSchema.parse(input));
    revalidatePath("/people");
    return undefined;
  });
}

export async function setPersonActiveAction(input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await setPersonActive(viewer, ActiveInputSchema.parse(input));
    revalidatePath("/people");
    return undefined;
  });
}

export async function resetPasswordAction(input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await resetPassword(viewer, PasswordInputSchema.parse(input));
    return undefined;
  });
}

export async function createSectionAction(input: unknown): Promise<ActionResult<{ sectionId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { sectionId } = await createSection(viewer, SectionInputSchema.parse(input));
    revalidatePath("/people", "layout");
    return { sectionId };
  });
}

export async function enrolStudentsAction(
  sectionId: string,
  studentIds: unknown,
): Promise<ActionResult<{ enrolled: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { enrolled } = await enrolStudents(viewer, {
      sectionId: z.string().parse(sectionId),
      studentIds: z.array(z.string()).parse(studentIds),
    });
    revalidatePath("/people", "layout");
    return { enrolled };
  });
}
