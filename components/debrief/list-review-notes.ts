/** What staff ruled and wrote, as a list to be read off paper. Pure. */
import type { DebriefRow } from "@/components/debrief/debrief-row";
import { listLooseComments, listRowComments } from "@/components/debrief/row-notes";
import type { CalloutWords } from "@/components/debrief/to-callout-words";
import { toRulingWords } from "@/components/debrief/to-ruling-words";
import type { DebriefView } from "@/lib/plot/student-view";

export interface ReviewNote {
  readonly key: string;
  /** What it is about, or what was overruled; null for the whole. */
  readonly about: string | null;
  readonly text: string;
  readonly byName: string;
}

/** Comments on the whole, then overrules, then comments on marks in the order of the rows. */
export function listReviewNotes(
  view: DebriefView,
  rows: readonly DebriefRow[],
  say: CalloutWords,
): ReviewNote[] {
  const toNote = ({ commentId, text, byName }: DebriefView["comments"][number], about: string | null) => ({
    key: commentId,
    about,
    text,
    byName,
  });
  const onWhole = listLooseComments(view, rows).map((one) => toNote(one, null));
  const overruled = view.overrules.map(({ overruleId, ruling, reason, byName }) => ({
    key: overruleId,
    about: `Overruled: ${toRulingWords(view, say, ruling)}.`,
    text: reason,
    byName,
  }));
  const onMarks = rows.flatMap((row) =>
    listRowComments(view, row).map((one) => toNote(one, `On ${row.callout} ${row.title}:`)),
  );
  return [...onWhole, ...overruled, ...onMarks];
}
