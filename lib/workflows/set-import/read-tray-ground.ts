import "server-only";
import { createHash } from "node:crypto";
import { requireAccess } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import type { Transaction } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type JudgedSet, judgeExerciseSet } from "@/lib/exchange/judge-exercise-set";
import { planSetImport, type TrayGround, type TrayStone } from "@/lib/exchange/plan-set-import";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { type SetImportPlan, SetImportPlanSchema } from "@/lib/plot/set-import";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";

/** A tray as an import finds it, with the ids that it writes by. */
export interface FoundTray extends TrayGround {
  readonly trayId: string;
  readonly name: string;
  readonly lastPosition: number;
  readonly stones: readonly (TrayStone & { readonly stoneId: string; readonly revision: number })[];
}

/** Reads the tray that a set is brought into. Throws AppError `not-allowed`, `not-found` or `reading-blind`. */
export async function readTrayGround(
  transaction: Transaction,
  viewer: Viewer,
  trayId: string,
): Promise<FoundTray> {
  const tray = await transaction.tray.findUnique({
    where: { id: trayId },
    include: {
      stones: {
        orderBy: { position: "asc" },
        include: { references: { orderBy: { version: "desc" }, take: 1 } },
      },
    },
  });
  const found = requireAccess(viewer, "edit-tray", tray && { ...tray, ownerId: tray.ownerId });
  await requireUnblinded(
    viewer,
    found.stones.map(({ id }) => id),
    transaction,
  );
  return {
    trayId: found.id,
    name: found.name,
    lastPosition: found.stones.at(-1)?.position ?? 0,
    terms: parseColumn(TrayTermsSchema, found.terms, "Tray.terms"),
    stones: found.stones.map((stone) => {
      const latest = stone.references[0];
      return {
        stoneId: stone.id,
        revision: stone.revision,
        label: stone.label,
        body: parseColumn(StoneBodySchema, stone.body, "Stone.body"),
        reference: latest === undefined ? null : parseColumn(ReferenceSchema, latest.body, "Reference.body"),
        version: latest?.version ?? 0,
      };
    }),
  };
}

/** Of the set as it was understood: what was refused may be nested deeper than can be written out. */
function toFingerprint({ set, faults }: JudgedSet, trayName: string, tray: FoundTray | null): string {
  return createHash("sha256")
    .update(JSON.stringify([set ?? faults, trayName, tray]))
    .digest("hex");
}

/** The plan of a set for a tray, or for a new one of that name. */
export function makeSetImportPlan(json: unknown, trayName: string, tray: FoundTray | null): SetImportPlan {
  const name = tray?.name ?? trayName;
  const judged = judgeExerciseSet(json);
  return SetImportPlanSchema.parse({
    trayId: tray?.trayId ?? null,
    trayName: name,
    ...planSetImport(judged, tray),
    fingerprint: toFingerprint(judged, name, tray),
  });
}
