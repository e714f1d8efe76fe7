/** What the database holds against what was acknowledged, step by step. */
import { isDeepStrictEqual } from "node:util";
import { closeDatabase, getDatabase } from "@/lib/data/store/database";
import { rebuildSitting, SittingEventSchema } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { makeStep, type Progress } from "@/tests/faults/plot-until-stopped";

export interface Comparison {
  readonly acknowledged: number;
  readonly saved: number;
  /** Acknowledged, and not in the database as they were sent. */
  readonly lost: number;
  /** In the log twice, or out of place. */
  readonly doubled: number;
  /** Sittings whose kept state is not what their log adds up to, or whose last batch is there in part. */
  readonly broken: number;
  readonly integrity: string;
}

/** Reads every sitting's log, with the server down or up. */
export async function compareLogs(all: readonly Progress[]): Promise<Comparison> {
  const totals = { acknowledged: 0, saved: 0, lost: 0, doubled: 0, broken: 0 };
  for (const { plotter, acknowledged } of all) {
    const rows = await getDatabase().sittingEvent.findMany({
      where: { sittingId: plotter.sittingId },
      orderBy: { seq: "asc" },
    });
    const log = rows.map(({ body }) => SittingEventSchema.parse(body));
    const bySeq = new Map(log.map((event) => [event.seq, event]));
    for (let seq = 1; seq <= acknowledged; seq += 1) {
      if (!isDeepStrictEqual(bySeq.get(seq), makeStep(seq))) totals.lost += 1;
    }
    const marks = log.flatMap((event) => (event.kind === "marks" ? event.put.map(({ id }) => id) : []));
    totals.doubled += marks.length - new Set(marks).size + (log.length - bySeq.size);
    totals.acknowledged += acknowledged;
    totals.saved += log.length;
    const sitting = await getDatabase().sitting.findUniqueOrThrow({ where: { id: plotter.sittingId } });
    const state = SittingStateSchema.parse(sitting.state);
    const isWhole = log.length % 3 === 0 && log.every(({ seq }, index) => seq === index + 1);
    if (!isWhole || !isDeepStrictEqual(state, rebuildSitting(log))) totals.broken += 1;
  }
  const [check] =
    await getDatabase().$queryRawUnsafe<{ integrity_check: string }[]>("PRAGMA integrity_check");
  await closeDatabase();
  return { ...totals, integrity: check?.integrity_check ?? "?" };
}
