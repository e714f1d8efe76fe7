import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { type TrailNote, writeTrail } from "@/lib/data/store/write-trail";
import {
  type PlannedPerson,
  planRoster,
  type RosterWork,
  type SectionTarget,
} from "@/lib/exchange/plan-roster";
import { readRoster } from "@/lib/exchange/read-roster";
import { parseInput } from "@/lib/plot/parse-input";
import {
  RosterInputSchema,
  readRosterGround,
  toRosterFingerprint,
} from "@/lib/workflows/roster/read-roster-ground";

const InputSchema = z.strictObject({ ...RosterInputSchema.shape, fingerprint: z.string() });

/** No password has this for its hash: the account waits for its invitation. */
const NO_PASSWORD = "-";

type SectionIds = ReadonlyMap<string, string>;

const toKey = (name: string, term: string) => JSON.stringify([name, term]);

async function makeSections(transaction: Transaction, sections: RosterWork["sections"]): Promise<SectionIds> {
  const ids = new Map<string, string>();
  for (const { name, term } of sections) {
    ids.set(toKey(name, term), (await transaction.section.create({ data: { name, term } })).id);
  }
  return ids;
}

function getSectionId(target: SectionTarget, made: SectionIds): string {
  const id = target.kind === "known" ? target.section.sectionId : made.get(toKey(target.name, target.term));
  if (id === undefined) throw new Error("a section of the plan was not made");
  return id;
}

/** Writes one person and tells what was written; nothing for who is as in the roster already. */
async function writePerson(
  transaction: Transaction,
  { person: { login, name, role }, known, joins }: PlannedPerson,
  made: SectionIds,
): Promise<{ userId: string; isNew: boolean; notes: TrailNote[] }> {
  const data = { login, name, role, passwordHash: NO_PASSWORD };
  const userId = known?.userId ?? (await transaction.user.create({ data })).id;
  const subject = { subjectKind: "person", subjectId: userId };
  const notes: TrailNote[] = known === null ? [{ action: "create-person", ...subject, detail: role }] : [];
  if (known !== null && known.name !== name) {
    await transaction.user.update({ where: { id: userId }, data: { name } });
    notes.push({ action: "rename-person", ...subject });
  }
  for (const target of joins) {
    const sectionId = getSectionId(target, made);
    if (role === "student") await transaction.enrolment.create({ data: { sectionId, studentId: userId } });
    else await transaction.sectionInstructor.create({ data: { sectionId, instructorId: userId } });
    const action = role === "student" ? "enrol-student" : "assign-instructor";
    notes.push({ action, subjectKind: "section", subjectId: sectionId, detail: `person ${userId}` });
  }
  return { userId, isNew: known === null, notes };
}

/**
 * Brings a roster in by the plan that was shown: accounts are made without a password, to be invited; names are
 * changed; people are enrolled or put to teach; sections are made. All or nothing. Throws AppError `not-allowed`,
 * `bad-input` with file, row and column of each fault, or `conflict` where the roster or what is there is another than
 * the plan's.
 */
export async function importRoster(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ newUserIds: string[]; changed: number; sections: number }> {
  requireRole(viewer, "manage-people");
  const { fingerprint, ...given } = parseInput(InputSchema, input);
  const roster = readRoster(given.files);
  return runInTransaction(async (transaction) => {
    const ground = await readRosterGround(
      transaction,
      roster.people.map(({ login }) => login),
    );
    const work = planRoster(roster, ground, given.termOfNew);
    if (work.faults.length > 0) {
      throw new AppError("bad-input", "The roster was refused; nothing was written.", work.faults);
    }
    if (toRosterFingerprint(given, ground) !== fingerprint) {
      throw new AppError(
        "conflict",
        "People or sections changed since this was worked out; nothing was written.",
      );
    }
    const made = await makeSections(transaction, work.sections);
    const notes: TrailNote[] = [...made].map(([key, subjectId]) => {
      const [name, term] = z.tuple([z.string(), z.string()]).parse(JSON.parse(key));
      return { action: "create-section", subjectKind: "section", subjectId, detail: `${name}, ${term}` };
    });
    const newUserIds: string[] = [];
    for (const planned of work.people) {
      const written = await writePerson(transaction, planned, made);
      if (written.isNew) newUserIds.push(written.userId);
      notes.push(...written.notes);
    }
    const changed = work.rows.filter(({ state }) => state === "changed").length;
    const detail = `${newUserIds.length} added, ${changed} changed, ${work.sections.length} sections made`;
    const whole = { action: "import-roster", subjectKind: "program", subjectId: "roster", detail };
    await writeTrail(transaction, viewer, whole, ...notes);
    return { newUserIds, changed, sections: work.sections.length };
  });
}
