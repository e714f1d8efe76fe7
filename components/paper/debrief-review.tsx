import { Text, View } from "@react-pdf/renderer";
import { createDebriefWords, type DebriefRow } from "@/components/debrief/debrief-row";
import { listReviewNotes } from "@/components/debrief/list-review-notes";
import { LINE, MUTED, styles } from "@/components/paper/paper-styles";
import type { DebriefView } from "@/lib/plot/student-view";

/** What staff ruled and wrote: first on the whole, then by mark. */
export function DebriefReview({ view, rows }: { view: DebriefView; rows: readonly DebriefRow[] }) {
  const notes = listReviewNotes(view, rows, createDebriefWords(view));
  if (notes.length === 0) return null;
  return (
    <View>
      <Text style={styles.heading}>From the instructor</Text>
      {notes.map(({ key, about, text, byName }) => (
        <View
          key={key}
          wrap={false}
          style={{ marginBottom: 4, paddingLeft: 7, borderLeftWidth: 2, borderLeftColor: LINE }}
        >
          <Text>
            {about !== null && <Text style={{ fontWeight: 700 }}>{about} </Text>}
            {text}
          </Text>
          <Text style={{ color: MUTED, fontSize: 8.5 }}>{byName}</Text>
        </View>
      ))}
    </View>
  );
}
