/** What bringing an exercise set in would do, told before anything is written. Staff only. */
import { z } from "zod";
import type { Fault } from "@/lib/base/app-error";

export const SET_STONE_STATES = ["made", "changed", "unchanged", "refused"] as const;

const FaultSchema: z.ZodType<Fault> = z.strictObject({ path: z.string(), message: z.string() });

/** A stone of the file and what would become of it. */
export const SetStonePlanSchema = z.strictObject({
  /** Its place in the file, as `stones[2]`. */
  path: z.string(),
  label: z.string(),
  state: z.enum(SET_STONE_STATES),
  /** In words: what is new or differs, or where it is at fault. */
  changes: z.array(z.string()),
});
export type SetStonePlan = z.infer<typeof SetStonePlanSchema>;

export const SetImportPlanSchema = z.strictObject({
  /** The tray that takes the stones; null for a new one. */
  trayId: z.string().nullable(),
  trayName: z.string(),
  stones: z.array(SetStonePlanSchema),
  /** What changes in the tray's own terms, in words. */
  terms: z.array(z.string()),
  /** Stones of the tray that the file does not name: they stay as they are. */
  kept: z.array(z.string()),
  /** One or more: nothing of the file can be brought in. */
  faults: z.array(FaultSchema),
  /** Of the file and of what it would change: an import by this plan is refused once either is another. */
  fingerprint: z.string(),
});
export type SetImportPlan = z.infer<typeof SetImportPlanSchema>;
