/** A rescore: what it scores by, how far it is, and what it changes; points in hundredths, as results keep them. */
import { z } from "zod";

/** `working`: being worked out; `ready`: worked out, nothing changed yet; `applied`: in force; `discarded`: thrown away. */
export const RESCORE_STATES = ["working", "ready", "applied", "discarded"] as const;
export const RescoreStateSchema = z.enum(RESCORE_STATES);

/** By which reference and which body each stone of the exercise is scored; stones without a reference are left out. */
export const RescoreGroundSchema = z.array(
  z.strictObject({ exerciseStoneId: z.string(), referenceId: z.string(), stoneRevision: z.int() }),
);
export type RescoreGround = z.infer<typeof RescoreGroundSchema>;

/** What a rescore changes of the points, in hundredths. `mean` and `largest` are signed: after less before. */
export const RescoreSummarySchema = z.strictObject({
  changed: z.int(),
  unchanged: z.int(),
  up: z.int(),
  down: z.int(),
  meanHundredths: z.number(),
  largestHundredths: z.int(),
});
export type RescoreSummary = z.infer<typeof RescoreSummarySchema>;

/** A result's points before and after, in hundredths. */
export interface TotalChange {
  readonly before: number;
  readonly after: number;
}

/**
 * Counts what changes. The mean is over all results, changed or not; the largest change is the farthest from nothing,
 * of two as far the loss. Nothing to rescore gives noughts.
 */
export function summariseRescore(changes: readonly TotalChange[]): RescoreSummary {
  const moves = changes.map(({ before, after }) => after - before);
  const up = moves.filter((move) => move > 0).length;
  const down = moves.filter((move) => move < 0).length;
  const sum = moves.reduce((total, move) => total + move, 0);
  const largest = moves.reduce(
    (most, move) =>
      Math.abs(move) > Math.abs(most) || (move < 0 && Math.abs(move) === Math.abs(most)) ? move : most,
    0,
  );
  return {
    changed: up + down,
    unchanged: moves.length - up - down,
    up,
    down,
    meanHundredths: moves.length === 0 ? 0 : Math.round((sum / moves.length) * 100) / 100,
    largestHundredths: largest,
  };
}

/** Sorts changes: the biggest first, of two as big the loss, then as they came. */
export function compareChanges(a: TotalChange, b: TotalChange): number {
  const [moveA, moveB] = [a.after - a.before, b.after - b.before];
  return Math.abs(moveB) - Math.abs(moveA) || moveA - moveB;
}

/** Hundredths as signed points with two decimals: `+1.25`, `−0.50`, `0.00`. */
export function toSignedPoints(hundredths: number): string {
  const text = (Math.abs(hundredths) / 100).toFixed(2);
  return hundredths > 0 ? `+${text}` : hundredths < 0 ? `−${text}` : text;
}
