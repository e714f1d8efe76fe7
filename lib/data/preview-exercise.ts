import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type ExerciseWithParts, findExercise } from "@/lib/data/store/find-exercise";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { arrangeOwnPlaces } from "@/lib/plot/arrange-own-places";
import { type ExerciseRules, ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { findStoneOpening } from "@/lib/plot/find-stone-opening";
import { EMPTY_SITTING } from "@/lib/plot/sitting-event";
import { type PhotoView, PhotoViewSchema } from "@/lib/plot/stone-photo";
import { type BenchView, BenchViewSchema, type MyExercise, MyExerciseSchema } from "@/lib/plot/student-view";
import { toEndsAt } from "@/lib/plot/time-limit";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";

/** What stands for a sitting where there is none. */
const NO_SITTING = "preview";

async function getExercise(viewer: Viewer, exerciseId: string) {
  requireRole(viewer, "preview-exercise");
  const found = await findExercise(getDatabase(), exerciseId);
  const { row } = requireAccess(viewer, "preview-exercise", found);
  return { row, rules: parseColumn(ExerciseRulesSchema, row.rules, "Exercise.rules") };
}

/** The stones set for all, in the order and under the names that one student would meet. */
function arrange(viewer: Viewer, row: ExerciseWithParts, rules: ExerciseRules) {
  const set = row.stones.filter(({ isRetake }) => !isRetake);
  return arrangeOwnPlaces(set, rules.areLabelsHidden, viewer.userId);
}

/** An exercise as a student who has begun nothing sees it now. Makes nothing. Throws AppError `not-found`. */
export async function previewMyExercise(viewer: Viewer, exerciseId: string): Promise<MyExercise> {
  const { row, rules } = await getExercise(viewer, exerciseId);
  const now = new Date();
  const phase = toExercisePhase(row, now);
  const isTaken = phase === "open" || phase === "late";
  const arranged = arrange(viewer, row, rules);
  return MyExerciseSchema.parse({
    exerciseId: row.id,
    title: row.title,
    notes: row.notes,
    sectionName: row.section.name,
    opensAt: row.opensAt.toISOString(),
    dueAt: row.dueAt.toISOString(),
    closesAt: row.closesAt?.toISOString() ?? null,
    debriefsAt: row.debriefsAt?.toISOString() ?? null,
    phase,
    minutesPerStone: rules.minutesPerStone,
    stones: arranged.map(({ place, label }, index) => {
      const { cut, weightCt } = toStoneCard(place.stone);
      const opening = findStoneOpening(place, now);
      return {
        exerciseStoneId: place.id,
        label,
        cut,
        weightCt: weightCt ?? null,
        state: phase === "closed" ? "missed" : "not-begun",
        sittingId: null,
        attempt: 0,
        attemptsLeft: isTaken && opening === null ? rules.attempts : 0,
        isRetake: false,
        opensAfter: rules.isInOrder ? (arranged[index - 1]?.label ?? null) : null,
        opensAt: phase === "closed" ? null : (opening?.toISOString() ?? null),
        earlierDebriefId: null,
        markCount: 0,
        handedInAt: null,
        endsAt: null,
        total: null,
      };
    }),
  });
}

export interface BenchPreview {
  readonly view: BenchView;
  /** What students are shown of the stone besides. */
  readonly photos: readonly PhotoView[];
}

/**
 * The bench of a stone of an exercise as a student opens it, whether the exercise is open or not. No sitting is made and
 * nothing can be saved in it. Throws AppError `not-found`.
 */
export async function previewBench(
  viewer: Viewer,
  exerciseId: string,
  exerciseStoneId: string,
): Promise<BenchPreview> {
  const { row, rules } = await getExercise(viewer, exerciseId);
  const found = arrange(viewer, row, rules).find(({ place }) => place.id === exerciseStoneId);
  if (found === undefined) throw refuseAsNotFound();
  const { place, label } = found;
  const now = new Date();
  const photos = await getDatabase().stonePhoto.findMany({
    where: { stoneId: place.stoneId, isShown: true },
    orderBy: { position: "asc" },
  });
  const { minutesPerStone } = rules;
  return {
    view: BenchViewSchema.parse({
      sittingId: NO_SITTING,
      exerciseId: row.id,
      exerciseTitle: row.title,
      dueAt: row.dueAt.toISOString(),
      closesAt: row.closesAt?.toISOString() ?? null,
      debriefsAt: row.debriefsAt?.toISOString() ?? null,
      rules,
      stone: { ...toStoneCard(place.stone), label },
      ...toTermsView(parseColumn(ExerciseTermsSchema, row.terms, "Exercise.terms")),
      openedAt: now.toISOString(),
      endsAt: minutesPerStone === null ? null : toEndsAt(now, minutesPerStone, null).toISOString(),
      readAt: now.toISOString(),
      ...EMPTY_SITTING,
      lastAtMs: 0,
      writerId: null,
      handedInAt: null,
      timedOut: false,
    }),
    photos: photos.map(({ id, caption, widthPx, heightPx }) =>
      PhotoViewSchema.parse({ photoId: id, caption, widthPx, heightPx }),
    ),
  };
}
