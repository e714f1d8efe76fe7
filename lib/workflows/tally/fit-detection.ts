import { createHash } from "node:crypto";
import { fitRasch, type RaschFit } from "@/lib/agreement/fit-rasch";
import type { RaschResponse } from "@/lib/agreement/rasch-responses";
import { getDatabase } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { MarkOutcomeSchema } from "@/lib/plot/result-tally";

/** A reference mark of a stone as an item: its two ids, apart by what neither holds. */
const toItem = (stoneId: string, markId: string) => `${stoneId}\n${markId}`;

/** The stone and the mark that an item stands for. */
export function fromItem(item: string): { stoneId: string; markId: string } {
  const end = item.indexOf("\n");
  return { stoneId: item.slice(0, end), markId: item.slice(end + 1) };
}

/** So many fits are remembered; beyond, all are forgotten. */
const MOST_KEPT = 60;
const kept = new Map<string, RaschFit>();

/**
 * Found or overlooked, for each student and reference mark of these exercises. Only the first hand-in of a student on a
 * stone counts: whoever has read its debrief knows what is in it.
 */
async function listResponses(
  exerciseIds: readonly string[],
  without: ReadonlySet<string>,
): Promise<RaschResponse[]> {
  const tallies = await getDatabase().resultTally.findMany({
    where: { exerciseId: { in: [...exerciseIds] } },
    orderBy: [{ handedInAt: "asc" }, { resultId: "asc" }],
    select: { studentId: true, outcome: true, exerciseStoneId: true },
  });
  const places = await getDatabase().exerciseStone.findMany({
    where: { exerciseId: { in: [...exerciseIds] } },
    select: { id: true, stoneId: true },
  });
  const stoneOf = new Map(places.map(({ id, stoneId }) => [id, stoneId]));
  const seen = new Set<string>();
  return tallies.flatMap(({ studentId, exerciseStoneId, outcome }) => {
    const stoneId = stoneOf.get(exerciseStoneId) ?? "";
    const key = `${studentId} ${stoneId}`;
    if (seen.has(key) || without.has(stoneId)) return [];
    seen.add(key);
    const { found, overlooked } = parseColumn(MarkOutcomeSchema, outcome, "ResultTally.outcome");
    const respond = (right: boolean) => (markId: string) => ({
      person: studentId,
      item: toItem(stoneId, markId),
      right,
    });
    return [...found.map(respond(true)), ...overlooked.map(respond(false))];
  });
}

/**
 * The Rasch model over the students and reference marks of some exercises, whose tallies are there (`ensureTallySums`).
 * Persons are students' ids, items as `fromItem` reads them. Stones whose ids are in `without` are no items. The same answers are fitted once and remembered.
 */
export async function fitDetection(
  exerciseIds: readonly string[],
  without: ReadonlySet<string> = new Set(),
): Promise<RaschFit> {
  const responses = await listResponses(exerciseIds, without);
  const hash = createHash("sha256");
  for (const { person, item, right } of responses) hash.update(`${person} ${item} ${right}\n`);
  const key = hash.digest("base64");
  const known = kept.get(key);
  if (known !== undefined) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  const fit = fitRasch(responses);
  kept.set(key, fit);
  return fit;
}
