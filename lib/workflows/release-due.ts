import { runInTransaction } from "@/lib/data/store/database";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { writeTrail } from "@/lib/data/store/write-trail";

/** So many at a time; the next sweep takes the rest. */
const MOST_AT_ONCE = 200;
/** An exercise is looked at for so long after its moment or its closing, ms: later hand-ins are released by hand. */
const LOOKED_AT_MS = 14 * 86_400_000;

/**
 * Releases the debriefs of exercises that open them by themselves from a moment on: what is handed in and scored, also
 * later. One that staff have released or taken back before stays as they left it. The release is in the name of whoever
 * set the exercise; the trail says that the program did it.
 */
export async function releaseDue(): Promise<{ released: number }> {
  const sittingIds = await runInTransaction(async (transaction) => {
    const now = new Date();
    const since = new Date(now.getTime() - LOOKED_AT_MS);
    const due = await transaction.sitting.findMany({
      where: {
        exerciseStone: {
          exercise: {
            debriefsAt: { lte: now },
            OR: [{ debriefsAt: { gt: since } }, { closesAt: { gt: since } }],
          },
        },
        handIn: { results: { some: { isCurrent: true } } },
        releases: { none: {} },
      },
      take: MOST_AT_ONCE,
      select: { id: true, exerciseStone: { select: { exercise: { select: { authorId: true } } } } },
    });
    if (due.length === 0) return [];
    await transaction.release.createMany({
      data: due.map(({ id, exerciseStone }) => ({
        sittingId: id,
        releasedById: exerciseStone.exercise.authorId,
        releasedAt: now,
      })),
    });
    const notes = due.map(({ id }) => ({
      action: "release-debrief",
      subjectKind: "sitting",
      subjectId: id,
      detail: "at the moment that the exercise says",
    }));
    await writeTrail(transaction, null, ...notes);
    return due.map(({ id }) => id);
  });
  if (sittingIds.length > 0) announceSittings(...sittingIds);
  return { released: sittingIds.length };
}
