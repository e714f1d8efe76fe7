/** Notes that staff send to a bench: what may be written, and what each side is sent of them. */
import { z } from "zod";

const instant = z.iso.datetime();

/** A note is read between two looks through the loupe. */
export const LONGEST_NOTE = 240;
/** Benches that one note goes to at once: a large class. */
export const MOST_BENCHES = 500;

/** One line of text: what control characters there are become spaces. */
export const NoteTextSchema = z
  .string()
  .transform((text) => text.replace(/\p{Cc}+/gu, " ").trim())
  .pipe(z.string().min(1).max(LONGEST_NOTE));

/** A note as the bench that it was sent to is given it: nothing of who looks on, or whether anybody does. */
export const StudentNoteSchema = z.strictObject({
  noteId: z.string(),
  text: z.string(),
  sentAt: instant,
});
export type StudentNote = z.infer<typeof StudentNoteSchema>;

/** What a bench hears: every note that it has not seen yet, oldest first. */
export const StudentNotesSchema = z.strictObject({ notes: z.array(StudentNoteSchema) });

/** A note as it stands in a debrief, for the student and for staff. */
export const DebriefNoteSchema = z.strictObject({
  text: z.string(),
  sentAt: instant,
  seenAt: instant.nullable(),
});
export type DebriefNote = z.infer<typeof DebriefNoteSchema>;

/** A note as the watch keeps it. */
export const SentNoteSchema = z.strictObject({
  noteId: z.string(),
  authorName: z.string(),
  ...DebriefNoteSchema.shape,
});
export type SentNote = z.infer<typeof SentNoteSchema>;
