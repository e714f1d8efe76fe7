/** The stones of a tray as the hand-in check ranks them, and its verdict. */
import { AppError } from "@/lib/base/app-error";
import type { Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { resolveTerms, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { findPlotFaults, findSolid } from "@/lib/plot/find-plot-faults";
import { resolveRubric } from "@/lib/plot/rubric";
import { ReferenceSchema, type StoneBody, StoneBodySchema } from "@/lib/plot/stone";
import type { StoneEvidence, StoneVerdict } from "@/lib/plot/stone-check";
import { identifyStone, prepareReference } from "@/lib/scoring/score-plot";

export const TRAY_PARTS = {
  stones: {
    orderBy: { position: "asc" },
    include: { references: { orderBy: { version: "desc" }, take: 1 } },
  },
} as const;

/** A tray with the latest reference of each stone. */
export interface TrayToJudge {
  readonly terms: unknown;
  readonly stones: readonly {
    readonly id: string;
    readonly label: string;
    readonly body: unknown;
    readonly references: readonly { readonly body: unknown }[];
  }[];
}

export async function findTrayToJudge(database: Transaction, trayId: string) {
  return database.tray.findUnique({ where: { id: trayId }, include: TRAY_PARTS });
}

/** Refuses features that are no marks on such a stone. Nothing of a reference enters into it. */
export function requireSoundEvidence(evidence: StoneEvidence, body: StoneBody, terms: unknown): void {
  const { solid } = findSolid(body, "stone");
  const resolved = resolveTerms(parseColumn(TrayTermsSchema, terms, "Tray.terms"));
  const faults = findPlotFaults({ grades: {}, marks: evidence.marks }, solid, resolved);
  if (faults.length > 0) throw new AppError("bad-input", "The features cannot be taken as they are.", faults);
}

/** Which stone of the tray this is, as staff may read it. `stoneId`: what the label says. */
export function judgeEvidence(
  tray: TrayToJudge,
  evidence: StoneEvidence,
  stoneId: string | null,
): StoneVerdict {
  const terms = parseColumn(TrayTermsSchema, tray.terms, "Tray.terms");
  const { characteristics } = resolveTerms(terms);
  const prepared = tray.stones.flatMap(({ label, body, references: [latest] }) =>
    latest === undefined
      ? []
      : prepareReference({
          stoneId: label,
          stone: parseColumn(StoneBodySchema, body, "Stone.body"),
          reference: parseColumn(ReferenceSchema, latest.body, "Reference.body"),
          characteristics,
        }),
  );
  const expected = tray.stones.find(({ id }) => id === stoneId)?.label ?? null;
  return identifyStone(evidence, prepared, resolveRubric(terms.rubric), expected);
}
