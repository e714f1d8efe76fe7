import "server-only";
import { createHash } from "node:crypto";
import { z } from "zod";
import type { Transaction } from "@/lib/data/store/database";
import type { RosterGround } from "@/lib/exchange/plan-roster";
import { RoleSchema } from "@/lib/plot/staff-view";

/** A roster's files as they are sent, and the term of the sections that it says none of. */
export const RosterInputSchema = z.strictObject({
  files: z
    .array(z.strictObject({ name: z.string().min(1).max(255), bytes: z.instanceof(Uint8Array) }))
    .max(20),
  termOfNew: z.string().trim().max(60).default(""),
});
export type RosterInput = z.infer<typeof RosterInputSchema>;

/** The accounts of those sign-in names, and every section. */
export async function readRosterGround(
  transaction: Transaction,
  logins: readonly string[],
): Promise<RosterGround> {
  const wanted = new Set(logins);
  const users = await transaction.user.findMany({
    include: { enrolments: true, teaches: true },
    orderBy: { login: "asc" },
  });
  const sections = await transaction.section.findMany({ orderBy: { id: "asc" } });
  return {
    people: users
      .filter(({ login }) => wanted.has(login))
      .map(({ id, login, name, role, active, enrolments, teaches }) => ({
        userId: id,
        login,
        name,
        role: RoleSchema.parse(role),
        active,
        sectionIds: [...enrolments, ...teaches].map(({ sectionId }) => sectionId).sort(),
      })),
    sections: sections.map(({ id, name, term }) => ({ sectionId: id, name, term })),
  };
}

/** Of the files' bytes and of what they are held against: one that differs in anything is another. */
export function toRosterFingerprint({ files, termOfNew }: RosterInput, ground: RosterGround): string {
  const hash = createHash("sha256").update(JSON.stringify([termOfNew, ground]));
  for (const { name, bytes } of files) hash.update(`${name}\n${bytes.length}\n`).update(bytes);
  return hash.digest("hex");
}
