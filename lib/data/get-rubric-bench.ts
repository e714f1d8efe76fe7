import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type ExerciseWithParts, findExercise } from "@/lib/data/store/find-exercise";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findProgramSettings } from "@/lib/data/store/find-program-settings";
import { getRubric } from "@/lib/data/store/get-rubric";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { PlotSchema } from "@/lib/plot/plots-file";
import { type RubricBench, RubricBenchSchema, type RubricExample } from "@/lib/plot/rescore-view";
import { ReferenceSchema } from "@/lib/plot/stone";

/** Every plot that was handed in on a stone that has a reference, by student's name and the stones' order. */
async function listPlots(exercise: ExerciseWithParts) {
  const places = exercise.stones.filter(({ stone }) => stone.references.length > 0).map(({ id }) => id);
  const rows = await getDatabase().sitting.findMany({
    where: { exerciseStoneId: { in: places }, handIn: { isNot: null } },
    orderBy: [{ student: { name: "asc" } }, { exerciseStone: { position: "asc" } }, { attempt: "asc" }],
    select: {
      id: true,
      markCount: true,
      student: { select: { name: true } },
      exerciseStone: { select: { stone: { select: { label: true } } } },
    },
  });
  return rows.map(({ id, markCount, student, exerciseStone }) => ({
    markCount,
    choice: { sittingId: id, studentName: student.name, stoneLabel: exerciseStone.stone.label },
  }));
}

/** A plot with the newest reference of its stone; null where it is not one of the exercise's. */
async function findExample(exercise: ExerciseWithParts, sittingId: string): Promise<RubricExample | null> {
  const row = await getDatabase().sitting.findUnique({
    where: { id: sittingId },
    include: { student: { select: { name: true } }, handIn: { select: { plot: true } } },
  });
  const place = exercise.stones.find(({ id }) => id === row?.exerciseStoneId);
  const latest = place?.stone.references[0];
  if (row?.handIn === null || row === null || place === undefined || latest === undefined) return null;
  return {
    sittingId,
    studentName: row.student.name,
    stone: toStoneCard(place.stone),
    reference: parseColumn(ReferenceSchema, latest.body, "Reference.body"),
    plot: parseColumn(PlotSchema, row.handIn.plot, "HandIn.plot"),
  };
}

/**
 * What the rubric's editor works on: the numbers in force and a real plot of the exercise to try others on, the one
 * asked for or else the one with the most marks; none where nothing was handed in. Throws AppError `not-found`, `reading-blind` or
 * `not-allowed`.
 */
export async function getRubricBench(
  viewer: Viewer,
  exerciseId: string,
  sittingId: string | null = null,
): Promise<RubricBench> {
  requireRole(viewer, "set-exercise");
  const database = getDatabase();
  const { row } = requireAccess(viewer, "set-exercise", await findExercise(database, exerciseId));
  await requireUnblinded(
    viewer,
    row.stones.map(({ stone }) => stone.id),
  );
  const { rubric, row: rubricRow } = getRubric(row.rubrics);
  const versions = await database.rubricVersion.findMany({
    where: { exerciseId },
    orderBy: { version: "desc" },
    select: { version: true, createdAt: true, author: { select: { name: true } } },
  });
  const plots = await listPlots(row);
  const fullest = plots.reduce(
    (most, one) => (one.markCount > (most?.markCount ?? -1) ? one : most),
    plots.at(0),
  );
  const asked = plots.find(({ choice }) => choice.sittingId === sittingId) ?? fullest;
  return RubricBenchSchema.parse({
    exerciseId,
    exerciseTitle: row.title,
    rubric,
    rubricVersion: rubricRow.version,
    defaults: (await findProgramSettings(database)).rubric,
    versions: versions.map(({ version, createdAt, author }) => ({
      version,
      authorName: author.name,
      createdAt: createdAt.toISOString(),
    })),
    terms: parseColumn(ExerciseTermsSchema, row.terms, "Exercise.terms"),
    results: await database.result.count({
      where: { isCurrent: true, handIn: { sitting: { exerciseStone: { exerciseId } } } },
    }),
    plots: plots.map(({ choice }) => choice),
    example: asked === undefined ? null : await findExample(row, asked.choice.sittingId),
  });
}
