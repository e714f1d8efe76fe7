import type { Viewer } from "@/lib/access/viewer";
import type { Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { PlotSchema } from "@/lib/plot/plots-file";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { PreparedSchema } from "@/lib/plot/student-view";

/** What of a sitting is handed in. */
export interface SittingToFreeze {
  readonly id: string;
  readonly state: unknown;
  readonly endsAt: Date | null;
}

/**
 * Hands in what a sitting's saved steps add up to, in the transaction of whoever asks. `timedOut`: the time ran out,
 * and it counts as handed in when it did. No actor: the program itself.
 */
export async function freezeSitting(
  transaction: Transaction,
  actor: Viewer | null,
  { id, state, endsAt }: SittingToFreeze,
  timedOut: boolean,
): Promise<{ handInId: string; handedInAt: Date }> {
  const { plot, prepared, lastSeq } = parseColumn(SittingStateSchema, state, "Sitting.state");
  const now = new Date();
  const made = await transaction.handIn.create({
    data: {
      sittingId: id,
      plot: toColumn(PlotSchema, plot),
      prepared: toColumn(PreparedSchema, prepared),
      lastSeq,
      handedInAt: timedOut && endsAt !== null && endsAt < now ? endsAt : now,
      timedOut,
    },
  });
  await writeTrail(transaction, actor, {
    action: "hand-in",
    subjectKind: "sitting",
    subjectId: id,
    ...(timedOut ? { detail: "the time ran out" } : {}),
  });
  return { handInId: made.id, handedInAt: made.handedInAt };
}
