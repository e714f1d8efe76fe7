import type { SentNote } from "@/lib/plot/bench-note";
import type { Prisma } from "@/prisma/generated/client";

type NoteRow = Prisma.BenchNoteGetPayload<{ include: { author: { select: { name: true } } } }>;

/** A note as staff are shown it. */
export function toSentNote({ id, author, text, sentAt, seenAt }: NoteRow): SentNote {
  return {
    noteId: id,
    authorName: author.name,
    text,
    sentAt: sentAt.toISOString(),
    seenAt: seenAt?.toISOString() ?? null,
  };
}
