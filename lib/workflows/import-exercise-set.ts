import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { type TrailNote, writeTrail } from "@/lib/data/store/write-trail";
import { type JudgedSet, judgeExerciseSet } from "@/lib/exchange/judge-exercise-set";
import { compareStone, mergeTerms, planSetImport, splitStone } from "@/lib/exchange/plan-set-import";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { parseInput } from "@/lib/plot/parse-input";
import type { SetStonePlan } from "@/lib/plot/set-import";
import { ReferenceSchema, type Stone, StoneBodySchema } from "@/lib/plot/stone";
import { TrayTextSchema } from "@/lib/plot/tray-text";
import {
  type FoundTray,
  makeSetImportPlan,
  readTrayGround,
} from "@/lib/workflows/set-import/read-tray-ground";

const InputSchema = z.strictObject({
  /** An exercise set, parsed from its file but not checked yet. */
  json: z.unknown(),
  /** The tray that takes the stones; a new one is made where it is null. */
  trayId: z.string().nullable().default(null),
  /** What a new tray is called. */
  trayName: TrayTextSchema.shape.name,
  /** Of the plan that was shown: what it was made from must still be so. Left out where none was shown. */
  fingerprint: z.string().optional(),
});

async function makeStone(
  transaction: Transaction,
  authorId: string,
  place: { trayId: string; position: number },
  stone: Stone,
): Promise<void> {
  const { body, reference } = splitStone(stone);
  await transaction.stone.create({
    data: {
      ...place,
      label: stone.id,
      body: toColumn(StoneBodySchema, body),
      references: { create: { version: 1, body: toColumn(ReferenceSchema, reference), authorId } },
    },
  });
}

/** Writes what differs of a stone that is there already, and tells what it wrote. */
async function changeStone(
  transaction: Transaction,
  authorId: string,
  known: FoundTray["stones"][number],
  stone: Stone,
): Promise<TrailNote[]> {
  const difference = compareStone(stone, known);
  const { body, reference } = splitStone(stone);
  const subject = { subjectKind: "stone", subjectId: known.stoneId };
  const notes: TrailNote[] = [];
  if (difference.body) {
    const revision = known.revision + 1;
    await transaction.stone.update({
      where: { id: known.stoneId },
      data: { body: toColumn(StoneBodySchema, body), revision },
    });
    notes.push({ action: "update-stone", ...subject, detail: `revision ${revision}` });
  }
  if (difference.reference) {
    const version = known.version + 1;
    const note = "brought in from a file";
    await transaction.reference.create({
      data: { stoneId: known.stoneId, version, body: toColumn(ReferenceSchema, reference), note, authorId },
    });
    notes.push({ action: "save-reference", ...subject, detail: `version ${version}` });
  }
  return notes;
}

async function ensureTray(
  transaction: Transaction,
  viewer: Viewer,
  judged: JudgedSet,
  found: FoundTray | null,
  name: string,
): Promise<string> {
  const terms = toColumn(TrayTermsSchema, mergeTerms(judged, found));
  if (found !== null) {
    await transaction.tray.update({ where: { id: found.trayId }, data: { terms } });
    return found.trayId;
  }
  const notes = judged.set?.notes ?? "";
  return (await transaction.tray.create({ data: { name, notes, ownerId: viewer.userId, terms } })).id;
}

function countStates(stones: readonly SetStonePlan[]) {
  const count = (state: SetStonePlan["state"]) => stones.filter((stone) => stone.state === state).length;
  return { made: count("made"), changed: count("changed"), unchanged: count("unchanged") };
}

/**
 * Brings an exercise set in as a new tray or into one that there is: new stones are added, a stone of the same label
 * gets a new version of its reference where it differs, and the rest stays. All or nothing. Throws AppError
 * `not-allowed`, `not-found`, `reading-blind`, `bad-input` with the path to each fault, or `conflict` where the tray or the file is
 * another than the plan's.
 */
export async function importExerciseSet(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ trayId: string; made: number; changed: number; unchanged: number }> {
  requireRole(viewer, "make-tray");
  const { json, trayId, trayName, fingerprint } = parseInput(InputSchema, input);
  const judged = judgeExerciseSet(json);
  return runInTransaction(async (transaction) => {
    const found = trayId === null ? null : await readTrayGround(transaction, viewer, trayId);
    const plan = planSetImport(judged, found);
    if (plan.faults.length > 0 || judged.set === null) {
      throw new AppError("bad-input", "The exercise set was refused; nothing was written.", plan.faults);
    }
    if (fingerprint !== undefined && fingerprint !== makeSetImportPlan(json, trayName, found).fingerprint) {
      throw new AppError("conflict", "The tray has changed since this was worked out; nothing was written.");
    }
    const known = new Map(found?.stones.map((stone) => [stone.label, stone]));
    const id = await ensureTray(transaction, viewer, judged, found, trayName);
    const notes: TrailNote[] = [];
    let position = found?.lastPosition ?? 0;
    for (const stone of judged.set.stones) {
      const old = known.get(stone.id);
      if (old !== undefined) notes.push(...(await changeStone(transaction, viewer.userId, old, stone)));
      else await makeStone(transaction, viewer.userId, { trayId: id, position: ++position }, stone);
    }
    const counts = countStates(plan.stones);
    const detail = `${counts.made} stones made, ${counts.changed} changed, ${counts.unchanged} as they were`;
    const whole = { action: "import-exercise-set", subjectKind: "tray", subjectId: id, detail };
    await writeTrail(transaction, viewer, whole, ...notes);
    return { trayId: id, ...counts };
  });
}
