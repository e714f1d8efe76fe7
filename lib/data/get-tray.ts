import { can } from "@/lib/access/can";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { HAND_OUT_PARTS, toHandOutView } from "@/lib/data/store/to-hand-out-view";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { toTermsView } from "@/lib/data/store/to-terms-view";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { type StoneRowSchema, type TrayView, TrayViewSchema } from "@/lib/plot/staff-view";
import { ReferenceSchema } from "@/lib/plot/stone";
import { MISMATCHES } from "@/lib/plot/stone-check";
import type { Prisma } from "@/prisma/generated/client";

/** A stone with its latest reference and the points of its hand-ins in the exercises that the viewer may review. */
const stoneParts = (exercise: Prisma.ExerciseWhereInput) =>
  ({
    references: { orderBy: { version: "desc" }, take: 1 },
    handOuts: { where: { returnedAt: null }, include: HAND_OUT_PARTS },
    checks: { where: { outcome: { in: [...MISMATCHES] }, settledAt: null }, select: { id: true } },
    exerciseStones: {
      where: { exercise },
      select: {
        sittings: {
          where: { handIn: { isNot: null } },
          select: {
            handIn: {
              select: { results: { where: { isCurrent: true }, select: { totalHundredths: true } } },
            },
          },
        },
      },
    },
  }) satisfies Prisma.StoneInclude;

type StoneRow = Prisma.StoneGetPayload<{ include: ReturnType<typeof stoneParts> }>;

function toRow(stone: StoneRow, isBlind: boolean, now: Date): typeof StoneRowSchema._output {
  const card = toStoneCard(stone);
  const [latest] = stone.references;
  const [out] = stone.handOuts;
  const reference = latest === undefined ? null : parseColumn(ReferenceSchema, latest.body, "Reference.body");
  const sittings = stone.exerciseStones.flatMap((one) => one.sittings);
  const totals = sittings.flatMap(({ handIn }) => handIn?.results.map((one) => one.totalHundredths) ?? []);
  return {
    stoneId: stone.id,
    label: card.label,
    position: stone.position,
    cut: card.cut,
    proportions: card.proportions,
    weightCt: card.weightCt ?? null,
    referenceVersion: latest?.version ?? 0,
    isBlind,
    referenceMarks: isBlind ? 0 : (reference?.marks.length ?? 0),
    clarity: isBlind ? null : (reference?.grades.clarity ?? null),
    out: out === undefined ? null : toHandOutView(out, now),
    mismatches: stone.checks.length,
    handIns: sittings.length,
    meanTotal:
      totals.length === 0 ? null : totals.reduce((sum, total) => sum + total, 0) / totals.length / 100,
  };
}

/** A tray with its stones in their places; no clarity of one that the viewer is second reader of. Throws AppError `not-found` or `not-allowed`. */
export async function getTray(viewer: Viewer, trayId: string): Promise<TrayView> {
  requireRole(viewer, "read-trays");
  const exercise = { section: whereSectionInScope(viewer, "review-exercise") };
  const tray = await getDatabase().tray.findUnique({
    where: { id: trayId },
    include: { stones: { orderBy: { position: "asc" }, include: stoneParts(exercise) } },
  });
  const now = new Date();
  const found = requireAccess(viewer, "read-trays", tray);
  const reading = await getDatabase().secondReading.findMany({
    where: { readerId: viewer.userId, state: "drawing", stone: { trayId } },
    select: { stoneId: true },
  });
  const blind = new Set(reading.map(({ stoneId }) => stoneId));
  return TrayViewSchema.parse({
    trayId: found.id,
    name: found.name,
    notes: found.notes,
    mayEdit: can(viewer, "edit-tray", found),
    stones: found.stones.map((stone) => toRow(stone, blind.has(stone.id), now)),
    characteristics: toTermsView(parseColumn(TrayTermsSchema, found.terms, "Tray.terms")).characteristics,
  });
}
