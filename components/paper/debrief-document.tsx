/** A debrief on paper: the same rows, words and points as on the screen. */
import { Document, Page, Text, View } from "@react-pdf/renderer";
import { buildDebriefLayers } from "@/components/debrief/build-debrief-layers";
import {
  CAUSE_LABELS,
  createDebriefWords,
  type DebriefRow,
  listDebriefRows,
} from "@/components/debrief/debrief-row";
import { layAlike } from "@/components/debrief/lay-mark";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { DebriefReview } from "@/components/paper/debrief-review";
import { PaperFoot } from "@/components/paper/paper-foot";
import type { PaperSize } from "@/components/paper/paper-size";
import { PAPER_POINTS, styles } from "@/components/paper/paper-styles";
import { PaperViews } from "@/components/paper/paper-views";
import { getSolid } from "@/lib/gem/build-solid";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import { DEFAULT_NOTATION } from "@/lib/plot/notation";
import type { DebriefView } from "@/lib/plot/student-view";
import { toMinuteWords } from "@/lib/plot/to-minute-words";

const SECTIONS = [
  ["found", "Found"],
  ["overlooked", "Overlooked"],
  ["stray", "Strays"],
  ["set-aside", "Set aside"],
] as const;

const signed = (points: number) => (points < 0 ? `−${Math.abs(points).toFixed(2)}` : points.toFixed(2));

function Row({ row }: { row: DebriefRow }) {
  const ink = DEFAULT_NOTATION[row.outcome].inks.light;
  const cost = row.costs.map(({ what, points }) => `${what} ${points.toFixed(2)}`).join(", ");
  const words = [...(cost === "" ? [] : [`Cost: ${cost}.`]), ...(row.outcome === "found" ? [] : row.words)];
  return (
    <View style={styles.row} wrap={false}>
      <Text style={{ width: 24, fontWeight: 700, color: ink }}>{row.callout}</Text>
      <View style={{ width: 170, paddingRight: 6 }}>
        <Text style={{ fontWeight: 700 }}>
          {row.title}
          {row.cause === null ? "" : ` – ${CAUSE_LABELS[row.cause]}`}
        </Text>
        <Text style={[styles.muted, { fontSize: 8.5 }]}>
          {row.view === "crown" ? "Crown" : "Pavilion"}, {row.place}
        </Text>
      </View>
      <View style={{ flex: 1 }}>
        {row.value !== null && <Text>{Math.round(row.value * 100)}% of its worth</Text>}
        {words.map((sentence) => (
          <Text key={sentence} style={{ fontSize: 8.5 }}>
            {sentence}
          </Text>
        ))}
      </View>
    </View>
  );
}

function Outcomes({ rows }: { rows: readonly DebriefRow[] }) {
  return (
    <>
      {SECTIONS.map(([outcome, title]) => {
        const own = rows.filter((row) => row.outcome === outcome);
        if (own.length === 0) return null;
        return (
          <View key={outcome}>
            <Text style={styles.heading} minPresenceAhead={40}>
              {title} ({own.length})
            </Text>
            {own.map((row) => (
              <Row key={`${row.key} ${row.partnerKey}`} row={row} />
            ))}
          </View>
        );
      })}
    </>
  );
}

function Points({ view }: { view: DebriefView }) {
  const say = createDebriefWords(view);
  return (
    <View>
      <Text style={styles.heading} minPresenceAhead={60}>
        Points
      </Text>
      {view.result.lines.map(({ what, points }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines never change, and two may read the same.
        <View key={index} style={styles.row} wrap={false}>
          <Text style={{ flex: 1 }}>{say(what)}</Text>
          <Text style={{ width: 50, textAlign: "right" }}>{signed(points)}</Text>
        </View>
      ))}
      <View style={styles.row} wrap={false}>
        <Text style={{ flex: 1, fontWeight: 700 }}>Total</Text>
        <Text style={{ width: 50, textAlign: "right", fontWeight: 700 }}>{signed(view.result.total)}</Text>
      </View>
    </View>
  );
}

function Grades({ view }: { view: DebriefView }) {
  const shown = GRADED_PROPERTIES.filter(
    (property) => view.reference.grades[property] !== undefined || view.plot.grades[property] !== undefined,
  );
  return (
    <View wrap={false}>
      <Text style={styles.heading}>Grades</Text>
      <View style={styles.headRow}>
        {["Property", "Given", "Reference"].map((label) => (
          <Text key={label} style={{ width: 120, fontWeight: 700, fontSize: 8.5 }}>
            {label}
          </Text>
        ))}
      </View>
      {shown.map((property) => (
        <View key={property} style={styles.row}>
          <Text style={{ width: 120 }}>{PROPERTY_LABELS[property]}</Text>
          <Text style={{ width: 120 }}>{view.plot.grades[property] ?? "–"}</Text>
          <Text style={{ width: 120 }}>{view.reference.grades[property] ?? "–"}</Text>
        </View>
      ))}
    </View>
  );
}

/** The debrief of one sitting. What it may hold is what `getDebrief` gave to whoever asks. */
export function DebriefDocument({ view, paper }: { view: DebriefView; paper: PaperSize }) {
  const { stone, result, detail, reference } = view;
  const rows = listDebriefRows(view);
  const laying = { turnDeg: result.alignment.turnDeg, mirrored: false };
  const layers = buildDebriefLayers(view, rows, layAlike(laying), "Plot").filter(
    ({ isShown }) => isShown !== false,
  );
  const found = new Set(result.found.map((one) => one.reference)).size;
  const counted = reference.marks.filter(({ optional }) => optional !== true).length;
  return (
    <Document title="Debrief" producer="Loupework" creator="Loupework">
      <Page size={[...PAPER_POINTS[paper]]} style={styles.page}>
        <View style={styles.head}>
          <View style={{ flexShrink: 1 }}>
            <Text style={styles.title}>{stone.label}</Text>
            <Text style={styles.muted}>
              {view.exerciseTitle} · {view.studentName} · handed in {toMinuteWords(new Date(view.handedInAt))}
            </Text>
          </View>
          <View>
            <Text style={[styles.title, { textAlign: "right" }]}>{result.total.toFixed(2)}</Text>
            <Text style={[styles.muted, { textAlign: "right" }]}>of 100 points</Text>
          </View>
        </View>
        <View style={styles.rule} />
        <Text style={{ marginBottom: 4 }}>
          {found} of {counted} found, {result.overlooked.length} overlooked, {result.strays.length}{" "}
          {result.strays.length === 1 ? "stray" : "strays"}.
          {laying.turnDeg === 0
            ? ""
            : ` The plot is shown turned by ${laying.turnDeg} degrees: that is how it fits.`}
        </Text>
        <PaperViews
          solid={getSolid(stone.cut, stone.proportions)}
          paper={paper}
          items={layers.flatMap(({ items }) => items)}
          links={layers.flatMap(({ links }) => links ?? [])}
        />
        <Outcomes rows={rows} />
        <DebriefReview view={view} rows={rows} />
        <Points view={view} />
        <Grades view={view} />
        {detail.practise.length > 0 && (
          <View wrap={false}>
            <Text style={styles.heading}>What to practise</Text>
            {detail.practise.map((sentence) => (
              <Text key={sentence}>• {createDebriefWords(view)(sentence)}</Text>
            ))}
          </View>
        )}
        <PaperFoot what={`Debrief, ${stone.label}, ${view.studentName}`} />
      </Page>
    </Document>
  );
}
