import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { rankDifficulty } from "@/lib/agreement/rank-difficulty";
import { isDefined } from "@/lib/agreement/statistic";
import { getDatabase } from "@/lib/data/store/database";
import { listBlindStones, requireUnblinded } from "@/lib/data/store/find-open-reading";
import { getRetakeGround } from "@/lib/data/store/find-retake-ground";
import { parseColumn } from "@/lib/data/store/parse-column";
import { ExerciseTermsSchema, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { parseInput } from "@/lib/plot/parse-input";
import { type RankedStone, type RatedStone, rankRetakeStones } from "@/lib/plot/rank-retake-stones";
import { ReferenceSchema } from "@/lib/plot/stone";
import { fitDetection, fromItem } from "@/lib/workflows/tally/fit-detection";
import { ensureTallySums } from "@/lib/workflows/tally/list-tally-sums";

const InputSchema = z.strictObject({
  exerciseId: z.string(),
  exerciseStoneId: z.string(),
  studentId: z.string(),
});

/** Exercises whose hand-ins are asked how hard the tray's stones are, at most: the latest. */
const MOST_EXERCISES = 12;
/** Stones that are offered. */
const MOST_OFFERED = 5;

/** How hard stones are, by everybody's plots in the latest exercises on them. */
async function measureDifficulties(stoneIds: readonly string[]): Promise<Map<string, number>> {
  const exercises = await getDatabase().exercise.findMany({
    where: { stones: { some: { stoneId: { in: [...stoneIds] } } } },
    orderBy: [{ dueAt: "desc" }, { id: "asc" }],
    take: MOST_EXERCISES,
    select: { id: true },
  });
  const ids = exercises.map(({ id }) => id);
  await ensureTallySums(ids);
  const ranked = rankDifficulty((await fitDetection(ids)).items, (item) => fromItem(item).stoneId);
  return new Map(
    ranked.flatMap(({ stoneId, difficulty }) =>
      isDefined(difficulty) ? [[stoneId, difficulty.value] as const] : [],
    ),
  );
}

/** The stones of a tray and of its owner's others that stand under the exercise's own scales and characteristics. */
async function listFitting(trayId: string, terms: unknown) {
  const database = getDatabase();
  const { ownerId } = await database.tray.findUniqueOrThrow({ where: { id: trayId } });
  const trays = await database.tray.findMany({ where: { ownerId }, select: { id: true, terms: true } });
  const own = parseColumn(ExerciseTermsSchema, terms, "Exercise.terms");
  const fitting = trays.filter((tray) => {
    const { rubric: _rubric, ...its } = parseColumn(TrayTermsSchema, tray.terms, "Tray.terms");
    return isDeepStrictEqual(its, own);
  });
  return database.stone.findMany({
    where: { trayId: { in: fitting.map(({ id }) => id) } },
    include: {
      tray: { select: { name: true } },
      references: { orderBy: { version: "desc" }, take: 1 },
    },
  });
}

/** Stones that a student has sat, in whichever exercise, or that are set for a section of theirs. */
async function listKnown(studentId: string): Promise<string[]> {
  const rows = await getDatabase().exerciseStone.findMany({
    where: {
      OR: [
        { sittings: { some: { studentId } } },
        { isRetake: false, exercise: { section: { enrolments: { some: { studentId } } } } },
      ],
    },
    select: { stoneId: true },
  });
  return rows.map(({ stoneId }) => stoneId);
}

/**
 * The stones that a student could sit in place of one they handed in, of its tray or of its owner's others under the same
 * scales, the nearest in difficulty first, each with why; none that is set for them in any exercise or that they have sat; none that the viewer is reading blind. Throws AppError `not-allowed`, `not-found`, or
 * `conflict` where the student has not handed the stone in.
 */
export async function listRetakeStones(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<RankedStone[]> {
  requireRole(viewer, "grant-allowance");
  const database = getDatabase();
  const parsed = parseInput(InputSchema, input);
  const { exercise, place } = await getRetakeGround(database, viewer, parsed);
  await requireUnblinded(viewer, [place.stoneId]);
  const taken = new Set([...(await listBlindStones(viewer)).keys(), ...(await listKnown(parsed.studentId))]);
  const stones = await listFitting(place.stone.trayId, exercise.terms);
  const difficulties = await measureDifficulties(stones.map(({ id }) => id));
  const rated = stones.map(({ id, label, tray, references: [latest] }): RatedStone => {
    const reference =
      latest === undefined ? null : parseColumn(ReferenceSchema, latest.body, "Reference.body");
    return {
      stoneId: id,
      label,
      trayName: tray.name,
      difficulty: difficulties.get(id) ?? null,
      marks: reference?.marks.length ?? null,
    };
  });
  const labels = new Set(exercise.stones.map(({ stone }) => stone.label));
  const target = rated.find(({ stoneId }) => stoneId === place.stoneId);
  if (target === undefined) return [];
  return rankRetakeStones(
    target,
    rated.filter(({ stoneId, label }) => !taken.has(stoneId) && !labels.has(label)),
  ).slice(0, MOST_OFFERED);
}
