/** Which stone comes nearest to another in difficulty, for a retake. Pure; the way of telling is this project's own. */

/** A stone as its difficulty can be told. */
export interface RatedStone {
  readonly stoneId: string;
  readonly label: string;
  readonly trayName: string;
  /** Mean difficulty of its marks by the Rasch model, logits, high is hard; null where nobody's plots say yet. */
  readonly difficulty: number | null;
  /** Marks of its reference; null where it has none. */
  readonly marks: number | null;
}

export interface RankedStone extends RatedStone {
  /** Why it stands where it does, as a sentence. */
  readonly because: string;
}

const toLogits = (value: number) => (Math.round(10 * value) / 10 + 0).toFixed(1).replace("-", "−");

function explain(one: RatedStone, target: RatedStone): string {
  if (one.difficulty !== null && target.difficulty !== null) {
    return `By what students found so far its difficulty is ${toLogits(one.difficulty)}, that of ${target.label} ${toLogits(target.difficulty)} (logits, higher is harder).`;
  }
  const whose = one.difficulty === null ? one.label : target.label;
  return `Its reference has ${one.marks} marks, that of ${target.label} has ${target.marks}; nobody’s plots say yet how hard ${whose} is.`;
}

function measureGap(one: RatedStone, target: RatedStone): readonly [number, number] {
  const marks = Math.abs((one.marks ?? 0) - (target.marks ?? 0));
  if (one.difficulty === null || target.difficulty === null) return [1, marks];
  return [0, Math.abs(one.difficulty - target.difficulty)];
}

/**
 * The stones by how near their difficulty is to the target's, the nearest first: those that students' plots tell of
 * before those of which only the number of reference marks is known. Stones without a reference are left out.
 */
export function rankRetakeStones(target: RatedStone, stones: readonly RatedStone[]): RankedStone[] {
  return stones
    .filter(({ stoneId, marks }) => marks !== null && stoneId !== target.stoneId)
    .map((one) => ({ one, gap: measureGap(one, target) }))
    .sort(
      (a, b) => a.gap[0] - b.gap[0] || a.gap[1] - b.gap[1] || a.one.label.localeCompare(b.one.label, "en"),
    )
    .map(({ one }) => ({ ...one, because: explain(one, target) }));
}
