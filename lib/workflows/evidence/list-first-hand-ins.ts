/** Students' first hand-ins on a stone, with every mark laid on the reference that it was scored by. */
import type { FirstHandIn, LaidMark } from "@/lib/agreement/stone-evidence";
import { getDatabase } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import { PlotSchema } from "@/lib/plot/plots-file";
import { ScoreResultSchema } from "@/lib/plot/score-result";
import { turnShape } from "@/lib/plot/turn-shape";
import { ensureTallySums } from "@/lib/workflows/tally/list-tally-sums";

/** At most the marks of so many results are remembered; beyond, all are forgotten. Results never change. */
const MOST_KEPT = 6000;
/** So many are read at once. */
const BATCH = 250;

/** What is remembered of a result. */
type LaidResult = Pick<FirstHandIn, "marks" | "found" | "overlooked">;
const kept = new Map<string, LaidResult>();

function layResult(plot: unknown, result: unknown): LaidResult {
  const { marks } = parseColumn(PlotSchema, plot, "HandIn.plot");
  const { alignment, strays, found, overlooked } = parseColumn(ScoreResultSchema, result, "Result.result");
  const causes = new Map(strays.map(({ mark, cause }) => [mark, cause]));
  return {
    marks: marks.map(({ id, view, shape, characteristic }): LaidMark => {
      const laid = turnShape(view, shape, alignment.turnDeg);
      return { view, shape: laid, at: getSampleCentre(laid), characteristic, cause: causes.get(id) ?? null };
    }),
    found: found.map(({ reference }) => reference),
    overlooked,
  };
}

async function layResults(resultIds: readonly string[]): Promise<void> {
  if (kept.size + resultIds.length > MOST_KEPT) kept.clear();
  const missing = resultIds.filter((id) => !kept.has(id));
  for (let from = 0; from < missing.length; from += BATCH) {
    const rows = await getDatabase().result.findMany({
      where: { id: { in: missing.slice(from, from + BATCH) } },
      select: { id: true, result: true, handIn: { select: { plot: true } } },
    });
    for (const { id, result, handIn } of rows) kept.set(id, layResult(handIn.plot, result));
  }
}

/**
 * The current result of the earliest scored hand-in of each student on a stone, in any exercise; in no order. From tallies, which
 * are found by the stone's places: results are large, and to look through them takes a second where there are many.
 */
export async function listFirstResults(stoneId: string) {
  const database = getDatabase();
  const places = await database.exerciseStone.findMany({
    where: { stoneId },
    select: { id: true, exerciseId: true },
  });
  await ensureTallySums([...new Set(places.map(({ exerciseId }) => exerciseId))]);
  const rows = await database.resultTally.findMany({
    where: { exerciseStoneId: { in: places.map(({ id }) => id) } },
    select: { resultId: true, studentId: true, handedInAt: true },
  });
  const first = new Map<string, { id: string; by: string; at: number }>();
  for (const { resultId, studentId, handedInAt } of rows) {
    const own = { id: resultId, by: studentId, at: handedInAt.getTime() };
    const known = first.get(own.by);
    if (known === undefined || own.at < known.at) first.set(own.by, own);
  }
  return [...first.values()];
}

/** A student's earliest scored hand-in on a stone: its current result, whose it is, and when it was handed in (ms). */
export type FirstResult = Awaited<ReturnType<typeof listFirstResults>>[number];

/** These with their marks; in no order. The caller has asked lib/access. */
export async function readFirstHandIns(first: readonly FirstResult[]): Promise<FirstHandIn[]> {
  await layResults(first.map(({ id }) => id));
  return first.flatMap(({ id, by, at }) => {
    const laid = kept.get(id);
    return laid === undefined ? [] : [{ by, handedInAt: new Date(at).toISOString(), ...laid }];
  });
}
