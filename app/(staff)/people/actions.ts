"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { LoginSchema, PasswordSchema, PersonNameSchema } from "@/lib/plot/account-input";
import { RoleSchema } from "@/lib/plot/staff-view";
import { createPerson } from "@/lib/workflows/create-person";
import { createSection } from "@/lib/workflows/create-section";
import { enrolStudents } from "@/lib/workflows/enrol-students";
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
