import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { EXERCISE_SET_FORMAT, type ExerciseSet, ExerciseSetSchema } from "@/lib/plot/exercise-set";
import { TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";

/**
 * A tray as an exercise set: its stones in their places with their latest references, and the scales,
 * characteristics and rubric where they differ from the defaults. A stone that has no reference yet is left out.
 * Brought in again it makes the same tray. Throws AppError `not-found` or `reading-blind`.
 */
export async function exportTraySet(viewer: Viewer, trayId: string): Promise<ExerciseSet> {
  requireRole(viewer, "read-trays");
  const row = await getDatabase().tray.findUnique({
    where: { id: trayId },
    include: {
      stones: {
        orderBy: { position: "asc" },
        include: { references: { orderBy: { version: "desc" }, take: 1 } },
      },
    },
  });
  const tray = requireAccess(viewer, "read-trays", row);
  await requireUnblinded(
    viewer,
    tray.stones.map(({ id }) => id),
  );
  const terms = parseColumn(TrayTermsSchema, tray.terms, "Tray.terms");
  return ExerciseSetSchema.parse({
    format: EXERCISE_SET_FORMAT,
    version: 1,
    title: tray.name,
    ...(tray.notes === "" ? {} : { notes: tray.notes }),
    ...(Object.keys(terms.rubric).length === 0 ? {} : { rubric: terms.rubric }),
    ...(Object.keys(terms.scales).length === 0 ? {} : { scales: terms.scales }),
    ...(terms.characteristics.length === 0 ? {} : { characteristics: terms.characteristics }),
    stones: tray.stones.flatMap(({ label, body, references: [latest] }) =>
      latest === undefined
        ? []
        : [
            {
              id: label,
              ...parseColumn(StoneBodySchema, body, "Stone.body"),
              ...parseColumn(ReferenceSchema, latest.body, "Reference.body"),
            },
          ],
    ),
  });
}
