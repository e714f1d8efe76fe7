import { parseColumn } from "@/lib/data/store/parse-column";
import type { Scales } from "@/lib/plot/grades";
import { PlotSchema } from "@/lib/plot/plots-file";
import { type ScoreResult, ScoreResultSchema } from "@/lib/plot/score-result";
import type { ReviewCell } from "@/lib/plot/staff-view";
import type { Prisma } from "@/prisma/generated/client";

/** What a cell of the review grid is made of. */
export const CELL_PARTS = {
  student: { select: { id: true, name: true } },
  handIn: {
    include: {
      results: {
        where: { isCurrent: true },
        select: { result: true, totalHundredths: true },
      },
    },
  },
  releases: { where: { withdrawnAt: null }, select: { id: true } },
  _count: { select: { overrules: { where: { endedAt: null } }, comments: { where: { deletedAt: null } } } },
} as const satisfies Prisma.SittingInclude;

export type CellRow = Prisma.SittingGetPayload<{ include: typeof CELL_PARTS }>;

function countByCause(strays: ScoreResult["strays"]): ReviewCell["straysByCause"] {
  const counts: ReviewCell["straysByCause"] = {};
  for (const { cause } of strays) counts[cause] = (counts[cause] ?? 0) + 1;
  return counts;
}

/** Steps from the reference's clarity to the plot's along the scale; positive is harsher, null where either lacks. */
export function findClarityBias(
  scales: Scales,
  reference: string | undefined,
  plotted: string | undefined,
): number | null {
  if (reference === undefined || plotted === undefined) return null;
  const from = scales.clarity.indexOf(reference);
  const to = scales.clarity.indexOf(plotted);
  return from < 0 || to < 0 ? null : to - from;
}

/** How far a sitting is; no sitting is a stone not begun. */
export function toCellState(
  sitting:
    | {
        readonly handIn: { readonly results: readonly unknown[] } | null;
        readonly releases: readonly unknown[];
      }
    | undefined,
): ReviewCell["state"] {
  if (sitting === undefined) return "not-begun";
  if (sitting.handIn === null) return "on-the-bench";
  if (sitting.handIn.results.length === 0) return "scoring";
  return sitting.releases.length > 0 ? "released" : "scored";
}

/** The cell of a student and a stone; no sitting is a stone not begun. One that is kept back holds nothing that was scored. */
export function toReviewCell(
  at: { readonly studentId: string; readonly exerciseStoneId: string },
  sitting: CellRow | undefined,
  scales: Scales,
  referenceClarity: string | undefined,
  isKeptBack = false,
): Omit<ReviewCell, "retakeOn" | "earlier"> {
  const current = sitting?.handIn?.results[0];
  const empty = {
    ...at,
    sittingId: sitting?.id ?? null,
    attempt: sitting?.attempt ?? 0,
    markCount: sitting?.markCount ?? 0,
    total: null,
    found: 0,
    overlooked: 0,
    straysByCause: {},
    clarityBias: null,
    suspectStone: null,
    overrules: 0,
    comments: 0,
    timedOut: sitting?.handIn?.timedOut ?? false,
  };
  const state = toCellState(sitting);
  if (sitting === undefined || sitting.handIn === null || current === undefined || isKeptBack) {
    return { ...empty, state };
  }
  const result = parseColumn(ScoreResultSchema, current.result, "Result.result");
  const plot = parseColumn(PlotSchema, sitting.handIn.plot, "HandIn.plot");
  return {
    ...empty,
    state,
    total: current.totalHundredths / 100,
    found: result.found.length,
    overlooked: result.overlooked.length,
    straysByCause: countByCause(result.strays),
    clarityBias: findClarityBias(scales, referenceClarity, plot.grades.clarity),
    suspectStone: result.suspectStone,
    overrules: sitting._count.overrules,
    comments: sitting._count.comments,
  };
}
