import { randomUUID } from "node:crypto";
import firstLook from "@/exercise-sets/first-look.json";
import gradeBoundaries from "@/exercise-sets/grade-boundaries.json";
import reflectionsAndGlints from "@/exercise-sets/reflections-and-glints.json";
import type { Transaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { planLargeSets } from "@/lib/demo/large-program";
import { listFeatureImages } from "@/lib/demo/list-feature-images";
import type { SimulatedStone } from "@/lib/demo/simulate-sitting";
import { DEFAULT_TERMS, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { parseExerciseSet, type ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { ReferenceSchema, type Stone, StoneBodySchema, toReference } from "@/lib/plot/stone";

export interface LargeTray {
  readonly resolved: ResolvedSet;
  readonly simulated: readonly SimulatedStone[];
  /** In the order of the set. */
  readonly stones: readonly { readonly stoneId: string; readonly referenceId: string }[];
}

function toBody({ id: _id, grades: _grades, marks: _marks, decoys: _decoys, ...body }: Stone) {
  return body;
}

/** The trays with everything that is worked out of their stones once. */
export function prepareLargeTrays(): LargeTray[] {
  const sources = [firstLook, reflectionsAndGlints, gradeBoundaries].flatMap(
    (json) => parseExerciseSet(json).set.stones,
  );
  return planLargeSets(sources).map((set) => {
    const resolved = parseExerciseSet(set);
    const { solids, characteristics, scales } = resolved;
    const simulated = resolved.set.stones.flatMap((stone, index): SimulatedStone[] => {
      const solid = solids[index];
      if (solid === undefined) return [];
      const images = listFeatureImages(stone, solid, characteristics);
      return [{ stone, solid, characteristics, scales, images }];
    });
    const stones = simulated.map(() => ({ stoneId: randomUUID(), referenceId: randomUUID() }));
    return { resolved, simulated, stones };
  });
}

/** Writes the trays with their stones and references. */
export async function writeLargeTrays(
  transaction: Transaction,
  trays: readonly LargeTray[],
  ownerId: string,
  createdAt: Date,
): Promise<void> {
  for (const { resolved, simulated, stones } of trays) {
    const tray = await transaction.tray.create({
      data: {
        name: resolved.set.title,
        notes: resolved.set.notes ?? "",
        ownerId,
        terms: toColumn(TrayTermsSchema, DEFAULT_TERMS),
        createdAt,
      },
    });
    for (const [index, { stone }] of simulated.entries()) {
      const ids = stones[index];
      if (ids === undefined) continue;
      await transaction.stone.create({
        data: {
          id: ids.stoneId,
          trayId: tray.id,
          position: index + 1,
          label: stone.id,
          body: toColumn(StoneBodySchema, toBody(stone)),
          createdAt,
          references: {
            create: {
              id: ids.referenceId,
              version: 1,
              body: toColumn(ReferenceSchema, toReference(stone)),
              authorId: ownerId,
              createdAt,
            },
          },
        },
      });
    }
  }
}
