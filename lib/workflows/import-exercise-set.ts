import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { parseExerciseSet } from "@/lib/plot/parse-exercise-set";
import { parseInput } from "@/lib/plot/parse-input";
import { ReferenceSchema, type Stone, StoneBodySchema, toReference } from "@/lib/plot/stone";
import { TrayTextSchema } from "@/lib/plot/tray-text";

const InputSchema = z.strictObject({
  /** An exercise set, parsed from its file but not checked yet. */
  json: z.unknown(),
  trayName: TrayTextSchema.shape.name,
});

/** The body of a stone of a file, without its id and without what is known of its clarity. */
function toBody({ id: _id, grades: _grades, marks: _marks, decoys: _decoys, ...body }: Stone) {
  return body;
}

async function writeStones(
  transaction: Transaction,
  trayId: string,
  authorId: string,
  stones: readonly Stone[],
): Promise<void> {
  for (const [index, stone] of stones.entries()) {
    await transaction.stone.create({
      data: {
        trayId,
        label: stone.id,
        position: index + 1,
        body: toColumn(StoneBodySchema, toBody(stone)),
        references: {
          create: { version: 1, body: toColumn(ReferenceSchema, toReference(stone)), authorId },
        },
      },
    });
  }
}

/**
 * Makes a tray of an exercise set: its stones under their ids, a first reference for each, and the set's scales,
 * characteristics and rubric. All or nothing. Throws AppError `not-allowed`, or `bad-input` with the path to each
 * fault of the set.
 */
export async function importExerciseSet(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ trayId: string }> {
  requireRole(viewer, "make-tray");
  const { json, trayName } = parseInput(InputSchema, input);
  const { set } = parseExerciseSet(json);
  const terms = toColumn(TrayTermsSchema, {
    scales: set.scales ?? {},
    characteristics: set.characteristics ?? [],
    rubric: set.rubric ?? {},
  });
  return runInTransaction(async (transaction) => {
    const tray = await transaction.tray.create({
      data: { name: trayName, notes: (set.notes ?? "").slice(0, 4000), ownerId: viewer.userId, terms },
    });
    await writeStones(transaction, tray.id, viewer.userId, set.stones);
    await writeTrail(transaction, viewer, {
      action: "import-exercise-set",
      subjectKind: "tray",
      subjectId: tray.id,
      detail: `${set.stones.length} stones`,
    });
    return { trayId: tray.id };
  });
}
