/** Second readings of the demo: colleagues who plotted stones without their references. */
import type { Transaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { simulateSitting } from "@/lib/demo/simulate-sitting";
import { getReaderSkill } from "@/lib/demo/worn-stones";
import { resolveTerms, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { ReadingFiguresSchema, type ReadingPlot, ReadingPlotSchema } from "@/lib/plot/second-reading";
import { type Stone, toReference } from "@/lib/plot/stone";
import type { DemoActor, DemoTrail } from "@/lib/workflows/demo/demo-trail";
import { simulateStones } from "@/lib/workflows/demo/read-demo-sets";
import type { DemoTray } from "@/lib/workflows/demo/write-demo-tray";
import { compareReadings } from "@/lib/workflows/reading/compare-readings";

const DAY_MS = 86_400_000;
const BEGUN_DAYS = 12;
const HANDED_IN_DAYS = 11.9;

export interface ReadingPlan {
  readonly resolved: ResolvedSet;
  readonly tray: DemoTray;
  /** Labels of the stones that are read. */
  readonly labels: readonly string[];
  readonly reader: DemoActor;
  /** The reader's sign-in name: what the plots are drawn from. */
  readonly login: string;
  readonly now: Date;
}

function toReading(plan: ReadingPlan, stone: Stone): ReadingPlot {
  const { resolved, login } = plan;
  const simulated = simulateStones(resolved, resolved.set.stones).find((one) => one.stone.id === stone.id);
  if (simulated === undefined) throw new RangeError(`writeDemoReadings: no stone ${stone.id}`);
  const { plot } = simulateSitting(simulated, getReaderSkill(login), `reading/${login}/${stone.id}`);
  const marks = plot.marks.map(({ id, view, characteristic, shape }) => ({
    id,
    view,
    characteristic,
    shape,
  }));
  return { grades: { clarity: stone.grades.clarity, ...plot.grades }, marks, decoys: [] };
}

/** Writes readings that are handed in and wait to be settled. The newest reference must be that of the set. */
export async function writeDemoReadings(
  transaction: Transaction,
  trail: DemoTrail,
  plan: ReadingPlan,
): Promise<void> {
  const { resolved, tray, labels, reader, now } = plan;
  const { scales = {}, characteristics = [] } = resolved.set;
  const terms = resolveTerms(TrayTermsSchema.parse({ scales, characteristics, rubric: {} }));
  const handedInAt = new Date(now.getTime() - HANDED_IN_DAYS * DAY_MS);
  for (const label of labels) {
    const stone = resolved.set.stones.find(({ id }) => id === label);
    const row = tray.stones.find((one) => one.label === label);
    if (stone === undefined || row === undefined) throw new RangeError(`writeDemoReadings: no ${label}`);
    const plot = toReading(plan, stone);
    const ground = { stone, terms, rubric: resolved.rubric };
    const { figures } = compareReadings(toReference(stone), plot, ground);
    const { version } = await transaction.reference.findUniqueOrThrow({ where: { id: row.referenceId } });
    await transaction.secondReading.create({
      data: {
        stoneId: row.stoneId,
        readerId: reader.userId,
        state: "handed-in",
        revision: 2,
        plot: toColumn(ReadingPlotSchema, plot),
        againstVersion: version,
        figures: toColumn(ReadingFiguresSchema, figures),
        createdAt: new Date(now.getTime() - BEGUN_DAYS * DAY_MS),
        handedInAt,
      },
    });
    trail.add(handedInAt, reader, {
      action: "hand-in-second-reading",
      subjectKind: "stone",
      subjectId: row.stoneId,
      detail: `against version ${version}`,
    });
  }
}
