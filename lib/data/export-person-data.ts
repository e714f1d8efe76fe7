import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { findOwnLabel } from "@/lib/data/store/find-own-label";
import { findPerson } from "@/lib/data/store/find-person";
import { parseColumn } from "@/lib/data/store/parse-column";
import { RulingSchema } from "@/lib/plot/overrule";
import { PERSON_DATA_FORMAT, type PersonData, PersonDataSchema } from "@/lib/plot/person-data";
import { PlotSchema } from "@/lib/plot/plots-file";
import { nameRuling } from "@/lib/plot/review";
import { ScoreResultSchema } from "@/lib/plot/score-result";
import { SittingEventSchema } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { StoneEvidenceSchema } from "@/lib/plot/stone-check";
import { PreparedSchema } from "@/lib/plot/student-view";
import type { Prisma } from "@/prisma/generated/client";

const SITTING_PARTS = {
  exerciseStone: { include: { stone: true, exercise: { include: { section: true } } } },
  events: { orderBy: { seq: "asc" } },
  notes: { orderBy: { sentAt: "asc" } },
  overrules: { where: { endedAt: null }, orderBy: { revision: "asc" } },
  comments: { where: { deletedAt: null }, orderBy: { madeAt: "asc" } },
  handIn: { include: { results: { where: { isCurrent: true } } } },
  releases: { where: { withdrawnAt: null } },
} as const satisfies Prisma.SittingInclude;

type SittingRow = Prisma.SittingGetPayload<{ include: typeof SITTING_PARTS }>;

/** The points and their lines, and what staff ruled and wrote of them, once the debrief is released and scored. */
function toResult({
  handIn,
  releases,
  overrules,
  comments,
}: SittingRow): PersonData["sittings"][number]["result"] {
  const current = handIn?.results[0];
  const release = releases[0];
  if (current === undefined || release === undefined) return null;
  const { total, lines } = parseColumn(ScoreResultSchema, current.result, "Result.result");
  return {
    releasedAt: release.releasedAt.toISOString(),
    total,
    lines,
    overrules: overrules.map(({ ruling, reason, madeAt }) => ({
      about: nameRuling(parseColumn(RulingSchema, ruling, "Overrule.ruling")),
      reason,
      madeAt: madeAt.toISOString(),
    })),
    comments: comments.map(({ subject, text, madeAt }) => ({ subject, text, madeAt: madeAt.toISOString() })),
  };
}

/** Under the name by which its student knows the stone: the file is theirs. */
async function toSitting(row: SittingRow, blind: ReadonlyMap<string, string>): Promise<unknown> {
  const { handIn, exerciseStone, state } = row;
  const live = parseColumn(SittingStateSchema, state, "Sitting.state");
  const log = row.events.map(({ body }) => parseColumn(SittingEventSchema, body, "SittingEvent.body"));
  return {
    exercise: exerciseStone.exercise.title,
    section: exerciseStone.exercise.section.name,
    stone: await findOwnLabel(getDatabase(), exerciseStone, row.studentId),
    attempt: row.attempt,
    openedAt: row.openedAt.toISOString(),
    handedInAt: handIn?.handedInAt.toISOString() ?? null,
    plot: handIn === null ? live.plot : parseColumn(PlotSchema, handIn.plot, "HandIn.plot"),
    prepared:
      handIn === null ? live.prepared : parseColumn(PreparedSchema, handIn.prepared, "HandIn.prepared"),
    log,
    notes: row.notes.map(({ sentAt, text }) => ({ sentAt: sentAt.toISOString(), text })),
    result: blind.has(exerciseStone.stone.id) ? null : toResult(row),
  };
}

/** Checks, allowances and retakes of a student, without the reasons: those are for staff. */
async function listAllowed(userId: string) {
  const database = getDatabase();
  const checks = await database.stoneCheck.findMany({ where: { byId: userId }, orderBy: { madeAt: "asc" } });
  const allowances = await database.allowance.findMany({
    where: { studentId: userId },
    orderBy: { grantedAt: "asc" },
    include: { exercise: { select: { title: true } } },
  });
  const retakes = await database.retake.findMany({
    where: { studentId: userId },
    orderBy: { grantedAt: "asc" },
    include: { exerciseStone: { select: { exercise: { select: { title: true } } } } },
  });
  return {
    checks: checks.map(({ madeAt, evidence }) => ({
      sentAt: madeAt.toISOString(),
      evidence: parseColumn(StoneEvidenceSchema, evidence, "StoneCheck.evidence"),
    })),
    allowances: allowances.map(({ exercise, extraMinutes, extraAttempts, dueAt, closesAt }) => ({
      exercise: exercise.title,
      extraMinutes,
      extraAttempts,
      dueAt: dueAt?.toISOString() ?? null,
      closesAt: closesAt?.toISOString() ?? null,
    })),
    retakes: retakes.map(({ exerciseStone, grantedAt }) => ({
      exercise: exerciseStone.exercise.title,
      grantedAt: grantedAt.toISOString(),
    })),
  };
}

/**
 * Everything that the program holds of a person, for them or for a director: account, sections, sittings with their
 * plots and logs, and results where the debrief is released and the director is not reading the stone blind. Throws AppError `not-found`, and `not-allowed` for staff
 * who ask for somebody else's.
 */
export async function exportPersonData(viewer: Viewer, userId: string): Promise<PersonData> {
  requireRole(viewer, "read-own-data");
  const database = getDatabase();
  const { row } = requireAccess(viewer, "read-own-data", await findPerson(database, userId));
  const teaches = await database.sectionInstructor.findMany({
    where: { instructorId: userId },
    include: { section: true },
  });
  const sittings = await database.sitting.findMany({
    where: { studentId: userId },
    orderBy: [{ openedAt: "asc" }, { id: "asc" }],
    include: SITTING_PARTS,
  });
  const blind = await listBlindStones(viewer);
  const allowed = await listAllowed(userId);
  const trail = await database.trailEntry.findMany({ where: { actorId: userId }, orderBy: { id: "asc" } });
  return PersonDataSchema.parse({
    format: PERSON_DATA_FORMAT,
    version: 1,
    madeAt: new Date().toISOString(),
    account: {
      login: row.login,
      name: row.name,
      role: row.role,
      createdAt: row.createdAt.toISOString(),
      lastSignInAt: row.lastSignInAt?.toISOString() ?? null,
    },
    sections: [
      ...row.enrolments.map(({ section, enrolledAt }) => ({
        name: section.name,
        term: section.term,
        enrolledAt: enrolledAt.toISOString(),
      })),
      ...teaches.map(({ section }) => ({ name: section.name, term: section.term, enrolledAt: null })),
    ],
    sittings: await Promise.all(sittings.map((row) => toSitting(row, blind))),
    ...allowed,
    trail: trail.map(({ at, action }) => ({ at: at.toISOString(), action })),
  });
}
