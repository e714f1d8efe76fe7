/** A reference while it is drawn: its clarity may still be missing. Pure. */
import { z } from "zod";
import { PlotGradesSchema, ReferenceGradesSchema } from "@/lib/plot/grades";
import { DecoySchema, MAX_MARKS, ReferenceMarkSchema } from "@/lib/plot/mark";
import type { Reference } from "@/lib/plot/stone";

export const ReferenceDraftSchema = z.strictObject({
  grades: PlotGradesSchema,
  marks: z.array(ReferenceMarkSchema).max(MAX_MARKS),
  decoys: z.array(DecoySchema).max(MAX_MARKS),
  note: z.string().max(1000),
});
export type ReferenceDraft = z.infer<typeof ReferenceDraftSchema>;

/** A draft that begins as this reference; empty for a stone that has none. */
export function toReferenceDraft(reference: Reference | null): ReferenceDraft {
  if (reference === null) return { grades: {}, marks: [], decoys: [], note: "" };
  return { grades: reference.grades, marks: reference.marks, decoys: reference.decoys, note: "" };
}

/** Kept work, judged; null when it is no draft of today's form. */
export function parseReferenceDraft(kept: unknown): ReferenceDraft | null {
  return ReferenceDraftSchema.safeParse(kept).data ?? null;
}

/** Where the unsaved reference of a stone is kept in this browser. */
export function toReferenceKey(userId: string, stoneId: string): string {
  return `loupework:reference:${userId}:${stoneId}`;
}

export interface ReferenceAdvice {
  readonly text: string;
  /** Nothing can be saved before this is mended. */
  readonly blocks: boolean;
}

/** With fewer reference marks than this a turned plot cannot be recognised by its marks (scoring.md 3). */
const MARKS_FOR_A_TURN = 3;

/** What is still open before a reference is saved. */
export function listReferenceAdvice(draft: ReferenceDraft, hasLandmark: boolean): ReferenceAdvice[] {
  const advice: ReferenceAdvice[] = [];
  if (draft.grades.clarity === undefined) {
    advice.push({ text: "Give the clarity grade: a reference must have one.", blocks: true });
  }
  const counted = draft.marks.filter(({ optional }) => optional !== true);
  if (counted.length > 0 && !counted.some(({ decidesGrade }) => decidesGrade === true)) {
    advice.push({ text: "No mark is set to decide the clarity grade.", blocks: false });
  }
  if (counted.length > 0 && counted.length < MARKS_FOR_A_TURN && !hasLandmark) {
    advice.push({
      text: "With fewer than three marks, give the stone a landmark: a turned plot cannot be told by its marks.",
      blocks: false,
    });
  }
  if (draft.marks.length > 0 && draft.marks.every(({ depth }) => depth === undefined)) {
    advice.push({
      text: "No mark has a depth: echoes can only be traced for marks that have one.",
      blocks: false,
    });
  }
  return advice;
}

/** The reference that a draft adds up to, or null while its clarity is missing. */
export function findReference(draft: ReferenceDraft): Reference | null {
  const grades = ReferenceGradesSchema.safeParse(draft.grades);
  return grades.success ? { grades: grades.data, marks: draft.marks, decoys: draft.decoys } : null;
}
