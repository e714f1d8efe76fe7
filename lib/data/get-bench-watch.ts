import type { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { findSitting } from "@/lib/data/store/find-sitting";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toSentNote } from "@/lib/data/store/to-sent-note";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import type { SentNote } from "@/lib/plot/bench-note";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { BenchWatchSchema } from "@/lib/plot/staff-view";
import { ReferenceSchema } from "@/lib/plot/stone";

async function findReference(stoneId: string) {
  const latest = await getDatabase().reference.findFirst({
    where: { stoneId },
    orderBy: { version: "desc" },
    select: { body: true },
  });
  return latest === null ? null : parseColumn(ReferenceSchema, latest.body, "Reference.body");
}

async function listNotes(sittingId: string): Promise<SentNote[]> {
  const rows = await getDatabase().benchNote.findMany({
    where: { sittingId },
    orderBy: { sentAt: "asc" },
    include: { author: { select: { name: true } } },
  });
  return rows.map(toSentNote);
}

/**
 * A sitting's plot as staff may look on while it grows, with the notes sent and the reference, which a second reader who has not
 * handed in does not get. Throws AppError `not-found` or `not-allowed`.
 */
export async function getBenchWatch(
  viewer: Viewer,
  sittingId: string,
): Promise<z.infer<typeof BenchWatchSchema>> {
  requireRole(viewer, "review-exercise");
  const { row } = requireAccess(viewer, "review-exercise", await findSitting(getDatabase(), sittingId));
  const { stone, exercise } = row.exerciseStone;
  const isBlind = (await listBlindStones(viewer)).has(stone.id);
  return BenchWatchSchema.parse({
    sittingId: row.id,
    studentName: row.student.name,
    label: stone.label,
    stone: toStoneCard(stone),
    characteristics: toTermsView(parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms"))
      .characteristics,
    plot: parseColumn(SittingStateSchema, row.state, "Sitting.state").plot,
    lastSeq: row.lastSeq,
    reference: isBlind ? null : await findReference(stone.id),
    isBlind,
    notes: await listNotes(row.id),
    endsAt: row.endsAt?.toISOString() ?? null,
  });
}
