import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findReadingOfTray, type ReadingWithParts } from "@/lib/data/store/find-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { findReferenceFaults, findSolid } from "@/lib/plot/find-plot-faults";
import { parseInput } from "@/lib/plot/parse-input";
import { ReadingPlotSchema, SettlingSchema } from "@/lib/plot/second-reading";
import { settleReadings } from "@/lib/plot/settle-readings";
import { type Reference, ReferenceSchema } from "@/lib/plot/stone";
import { compareReadings } from "@/lib/workflows/reading/compare-readings";
import { readReadingGround } from "@/lib/workflows/reading/read-reading-ground";

const InputSchema = z.strictObject({
  readingId: z.string(),
  /** The version of the reference that the choices were made on. */
  baseVersion: z.int().min(1),
  choices: SettlingSchema,
  note: z.string().trim().max(800).default(""),
});
type Input = z.output<typeof InputSchema>;

function requireNewest(
  row: ReadingWithParts,
  baseVersion: number,
): ReadingWithParts["stone"]["references"][number] {
  const [latest] = row.stone.references;
  if (row.state === "drawing") throw new AppError("conflict", "This second reading is not handed in yet.");
  if (row.state === "given-up") throw new AppError("conflict", "This second reading was given up.");
  if (row.state === "settled") throw new AppError("conflict", "This second reading was settled already.");
  if (latest === undefined || latest.version !== baseVersion) {
    throw new AppError(
      "conflict",
      "Somebody else saved a version of this reference meanwhile; nothing was written.",
    );
  }
  return latest;
}

function settle(row: ReadingWithParts, body: unknown, choices: Input["choices"]): Reference {
  const ground = readReadingGround(row.stone);
  const reference = parseColumn(ReferenceSchema, body, "Reference.body");
  const reading = parseColumn(ReadingPlotSchema, row.plot, "SecondReading.plot");
  const { differences } = compareReadings(reference, reading, ground);
  const settled = settleReadings(reference, differences, choices);
  const { solid } = findSolid(ground.stone, "body");
  const faults = findReferenceFaults(settled, solid, ground.terms, "reference");
  if (faults.length > 0) throw new AppError("bad-input", "The settled reference was not saved.", faults);
  return settled;
}

const count = (choices: Input["choices"], choice: string) =>
  Object.values(choices).filter((one) => one === choice).length;

/** Without names: who read and who settled stands with the reading, where a name can be erased. */
function toNote({ choices, note }: Input): string {
  const settled = `${count(choices, "second")} taken, ${count(choices, "merge")} merged, the rest kept.`;
  return note === "" ? settled : `${settled} ${note}`;
}

async function writeSettled(
  transaction: Transaction,
  viewer: Viewer,
  row: ReadingWithParts,
  made: { readonly reference: Reference; readonly version: number; readonly note: string },
): Promise<void> {
  const { reference, version, note } = made;
  await transaction.reference.create({
    data: {
      stoneId: row.stoneId,
      version,
      body: toColumn(ReferenceSchema, reference),
      note,
      authorId: viewer.userId,
    },
  });
  await transaction.secondReading.update({
    where: { id: row.id },
    data: { state: "settled", settledVersion: version, settledById: viewer.userId, settledAt: new Date() },
  });
  const subject = { subjectKind: "stone", subjectId: row.stoneId, detail: `version ${version}` };
  await writeTrail(
    transaction,
    viewer,
    { action: "settle-second-reading", ...subject },
    { action: "save-reference", ...subject },
  );
}

/**
 * Settles the differences between a second reading and the newest reference into a new version; a difference without a choice
 * keeps the first. Earlier versions, and results by them, stay until staff rescore. Throws AppError `not-allowed`,
 * `not-found`, `reading-blind`, `bad-input`, or `conflict` where it is not handed in, settled already, or a newer version was saved.
 */
export async function settleSecondReading(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ version: number }> {
  requireRole(viewer, "edit-tray");
  const given = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const found = await findReadingOfTray(transaction, given.readingId);
    const { row } = requireAccess(viewer, "edit-tray", found);
    await requireUnblinded(viewer, [row.stoneId], transaction);
    const latest = requireNewest(row, given.baseVersion);
    const reference = settle(row, latest.body, given.choices);
    const version = latest.version + 1;
    await writeSettled(transaction, viewer, row, {
      reference,
      version,
      note: toNote(given),
    });
    return { version };
  });
}
