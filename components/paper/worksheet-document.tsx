/** Blank worksheets, a page for each stone: what whoever holds it may know, and room to write. */
import { Document, Page, Text, View } from "@react-pdf/renderer";
import { STEP_WORDS } from "@/components/bench/preparation-steps";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { PaperFoot } from "@/components/paper/paper-foot";
import type { PaperSize } from "@/components/paper/paper-size";
import { INK, LINE, PAPER_POINTS, styles } from "@/components/paper/paper-styles";
import { PaperViews } from "@/components/paper/paper-views";
import { getSolid } from "@/lib/gem/build-solid";
import { CUT_LABELS } from "@/lib/gem/cut-name";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";
import type { StoneCard, WorksheetsView } from "@/lib/plot/student-view";

/** Rows to write marks in, that fit under the diagrams of either paper. */
const ROWS: Readonly<Record<PaperSize, number>> = { a4: 13, letter: 10 };

const COLUMNS = [
  ["No.", 26],
  ["View", 48],
  ["Characteristic", 132],
  ["Where: facet and clock", 150],
  ["Sure, 1–5", 48],
  ["Made sure by", 110],
] as const;

function Blank({ label, width }: { label: string; width: number }) {
  return (
    <View style={{ flexDirection: "row", alignItems: "flex-end", gap: 4 }}>
      <Text style={styles.muted}>{label}</Text>
      <View style={{ width, borderBottomWidth: 0.6, borderBottomColor: INK, height: 16 }} />
    </View>
  );
}

function toFacts({ cut, weightCt, measurementsMm, landmark }: StoneCard): string {
  const facts: string[] = [CUT_LABELS[cut]];
  if (weightCt !== undefined) facts.push(`${weightCt} ct`);
  if (measurementsMm !== undefined) facts.push(`${measurementsMm.join(" × ")} mm`);
  if (landmark !== undefined) facts.push(`held by: ${landmark}`);
  return facts.join(" · ");
}

function MarksTable({ rows }: { rows: number }) {
  return (
    <View style={{ marginTop: 6 }}>
      <View style={styles.headRow}>
        {COLUMNS.map(([label, width]) => (
          <Text key={label} style={{ width, fontWeight: 700, fontSize: 8.5 }}>
            {label}
          </Text>
        ))}
      </View>
      {Array.from({ length: rows }, (_, i) => i + 1).map((number) => (
        <View key={number} style={[styles.row, { height: 19 }]}>
          {COLUMNS.map(([label, width], column) => (
            <View
              key={label}
              style={{
                width,
                borderRightWidth: column === COLUMNS.length - 1 ? 0 : 0.4,
                borderRightColor: LINE,
                paddingLeft: 2,
              }}
            >
              <Text style={styles.muted}>{column === 0 ? String(number) : ""}</Text>
            </View>
          ))}
        </View>
      ))}
    </View>
  );
}

function Grades({ scales }: Pick<WorksheetsView, "scales">) {
  return (
    <View style={{ marginTop: 8 }} wrap={false}>
      {GRADED_PROPERTIES.map((property) => (
        <View key={property} style={{ flexDirection: "row", gap: 4, marginBottom: 1.5 }}>
          <Text style={{ width: 66, fontWeight: 700 }}>{PROPERTY_LABELS[property]}</Text>
          <Text style={{ flex: 1 }}>{scales[property].join("   ")}</Text>
        </View>
      ))}
      <Text style={[styles.muted, { fontSize: 8.5 }]}>Ring one grade in each line.</Text>
    </View>
  );
}

function Preparation() {
  return (
    <View style={{ flexDirection: "row", flexWrap: "wrap", columnGap: 14, marginBottom: 4 }}>
      {PREPARATION_STEPS.map((step) => (
        <View key={step} style={{ flexDirection: "row", alignItems: "center", gap: 4, width: "46%" }}>
          <View style={{ width: 7, height: 7, borderWidth: 0.7, borderColor: INK }} />
          <Text style={{ fontSize: 8.5 }}>{STEP_WORDS[step].title}</Text>
        </View>
      ))}
    </View>
  );
}

/** The worksheets of an exercise or a tray. Nothing of a reference is in its input, so nothing of one is in the file. */
export function WorksheetDocument({ view, paper }: { view: WorksheetsView; paper: PaperSize }) {
  return (
    <Document title="Worksheets" producer="Loupework" creator="Loupework">
      {view.stones.map((stone) => (
        <Page key={stone.label} size={[...PAPER_POINTS[paper]]} style={styles.page}>
          <View style={styles.head}>
            <View style={{ flex: 1, paddingRight: 14 }}>
              <Text style={styles.title}>{stone.label}</Text>
              <Text style={styles.muted}>{toFacts(stone)}</Text>
              <Text style={styles.muted}>{view.title}</Text>
            </View>
            <View style={{ gap: 2 }}>
              <Blank label="Name" width={150} />
              <Blank label="Date" width={150} />
            </View>
          </View>
          <View style={styles.rule} />
          <Preparation />
          <Text style={{ fontSize: 8, color: styles.muted.color, marginBottom: 2 }}>
            Clean and handle the stone by your school’s own rules; no steam, ultrasonic bath, boiling or acid
            in class.
          </Text>
          <PaperViews solid={getSolid(stone.cut, stone.proportions)} paper={paper} />
          <MarksTable rows={ROWS[paper]} />
          <Grades scales={view.scales} />
          <PaperFoot what={`Worksheet, ${stone.label}`} />
        </Page>
      ))}
    </Document>
  );
}
