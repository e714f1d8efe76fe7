/** Hand-outs: where a stone is that is not in its tray. For staff alone. */
import { z } from "zod";

const instant = z.iso.datetime();

/** Whom a stone is handed to: a student's account, or a seat by its name. */
export const HolderSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("student"), studentId: z.string() }),
  z.strictObject({ kind: z.literal("seat"), seat: z.string().trim().min(1, "name the seat").max(60) }),
]);
export type Holder = z.infer<typeof HolderSchema>;

export const StoneIdsSchema = z
  .array(z.string())
  .min(1, "choose one stone or more")
  .max(500)
  .transform((ids) => [...new Set(ids)]);

export const HandOutInputSchema = z.strictObject({
  stoneIds: StoneIdsSchema,
  to: HolderSchema,
  dueBackAt: instant.nullable(),
  note: z.string().trim().max(300).default(""),
});
export type HandOutInput = z.input<typeof HandOutInputSchema>;

export const HandOutViewSchema = z.strictObject({
  handOutId: z.string(),
  /** The student's name, or the seat's. */
  holder: z.string(),
  isSeat: z.boolean(),
  handedOutAt: instant,
  handedOutBy: z.string(),
  dueBackAt: instant.nullable(),
  isOverdue: z.boolean(),
  returnedAt: instant.nullable(),
  returnedBy: z.string().nullable(),
  note: z.string(),
});
export type HandOutView = z.infer<typeof HandOutViewSchema>;

/** A stone that is out, in a list across trays. */
export const OutRowSchema = z.strictObject({
  ...HandOutViewSchema.shape,
  stoneId: z.string(),
  label: z.string(),
  trayId: z.string(),
  trayName: z.string(),
});
export type OutRow = z.infer<typeof OutRowSchema>;

/** A stone whose label was scanned. */
export const ScannedStoneSchema = z.strictObject({
  stoneId: z.string(),
  code: z.string(),
  label: z.string(),
  position: z.int(),
  trayId: z.string(),
  trayName: z.string(),
  out: HandOutViewSchema.nullable(),
});
export type ScannedStone = z.infer<typeof ScannedStoneSchema>;

/** A student to whom the viewer may hand a stone. */
export const HolderOptionSchema = z.strictObject({
  studentId: z.string(),
  name: z.string(),
  sections: z.array(z.string()),
});
export type HolderOption = z.infer<typeof HolderOptionSchema>;
