/** A section's report on paper: the figures and the findings of its page, without the charts' pictures. */
import { Document, Page, Text, View } from "@react-pdf/renderer";
import { toNumberWords, toPercent } from "@/components/charts/to-figure-words";
import { PaperFoot } from "@/components/paper/paper-foot";
import type { PaperSize } from "@/components/paper/paper-size";
import { PAPER_POINTS, styles } from "@/components/paper/paper-styles";
import { PaperTable } from "@/components/paper/paper-table";
import { listHeadlines } from "@/components/section/list-headlines";
import { NEED_WORDS } from "@/components/section/needs-list";
import {
  CAUSE_LABELS,
  toCharacteristicMixUpWords,
  toDetectionWords,
  toGradeMixUpWords,
  toStrayWords,
} from "@/components/section/section-words";
import { toCharacteristicConfusion } from "@/lib/agreement/confusion-table";
import type { SectionReport } from "@/lib/agreement/section-report";
import { isDefined, type Quantity, type Statistic, toUndefined } from "@/lib/agreement/statistic";
import { getCount } from "@/lib/agreement/tally";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";

const NONE = "–";
const toFigure = (quantity: Quantity | undefined, format: (value: number) => string) =>
  quantity !== undefined && isDefined(quantity) ? format(quantity.value) : NONE;
const toInterval = (statistic: Statistic, format: (value: number) => string) =>
  isDefined(statistic) ? `${format(statistic.low)} to ${format(statistic.high)}` : statistic.undefined;
const one = (value: number) => toNumberWords(value, 1);
const two = (value: number) => toNumberWords(value, 2);

function Headlines({ report }: { report: SectionReport }) {
  return (
    <View style={{ flexDirection: "row", gap: 10, marginBottom: 2 }}>
      {listHeadlines(report).map(({ label, statistic, format, words, basis }) => (
        <View key={label} style={{ flexGrow: 1, flexShrink: 1, flexBasis: 0 }}>
          <Text style={[styles.muted, { fontSize: 8.5 }]}>{label}</Text>
          <Text style={{ fontSize: words === undefined ? 15 : 10, fontWeight: 700 }}>
            {isDefined(statistic) ? (words ?? format(statistic.value)) : NONE}
          </Text>
          <Text style={[styles.muted, { fontSize: 8 }]}>
            {toInterval(statistic, format)}
            {typeof basis === "string" ? `, ${basis}` : ""}
          </Text>
        </View>
      ))}
    </View>
  );
}

function Grades({ report }: { report: SectionReport }) {
  const clarity = report.rates.grades.clarity;
  if (clarity === undefined || clarity.graded === 0) return null;
  const { rows, columns, counts } = clarity.confusion;
  return (
    <PaperTable
      title="Clarity: reference down, plotted across"
      lead={toGradeMixUpWords(clarity)}
      fontSize={8.5}
      columns={[
        { head: "Reference", share: 2 },
        ...columns.map((head) => ({ head, share: 1, isNumber: true })),
      ]}
      rows={rows.map((grade, i) => [
        grade,
        ...columns.map((_, j) => {
          const count = counts[i]?.[j] ?? 0;
          return count === 0 ? "·" : String(count);
        }),
      ])}
    />
  );
}

function Characteristics({ report: { rates, clusters } }: { report: SectionReport }) {
  const confusion = toCharacteristicConfusion(
    Object.fromEntries(rates.characteristics.map((own) => [own.characteristic, own])),
  );
  const seen = rates.characteristics.filter(({ reference }) => reference > 0);
  const labelled = seen.map((row) => ({
    label: toCharacteristicLabel(row.characteristic),
    statistic: clusters.characteristics[row.characteristic] ?? toUndefined("no reference mark"),
    row,
  }));
  return (
    <PaperTable
      title="Reference marks found, by characteristic"
      lead={`${toDetectionWords(labelled)} ${toCharacteristicMixUpWords(confusion, toCharacteristicLabel, false)}`}
      columns={[
        { head: "Characteristic", share: 3 },
        { head: "Found", share: 1, isNumber: true },
        { head: "Of", share: 1, isNumber: true },
        { head: "Share", share: 1, isNumber: true },
        { head: "Interval", share: 2, isNumber: true },
      ]}
      rows={labelled.map(({ label, statistic, row }) => [
        label,
        String(row.found),
        String(row.reference),
        toFigure(statistic, toPercent),
        toInterval(statistic, toPercent),
      ])}
    />
  );
}

function Strays({ report: { rates } }: { report: SectionReport }) {
  return (
    <PaperTable
      title="Strays by cause"
      lead={toStrayWords(rates)}
      columns={CAUSE_LABELS.map(([, head]) => ({ head, share: 1, isNumber: true }))}
      rows={[CAUSE_LABELS.map(([cause]) => String(getCount(rates.strays, cause)))]}
    />
  );
}

function Stones({ report: { stones } }: { report: SectionReport }) {
  return (
    <PaperTable
      title="Stones by difficulty, the hardest first"
      columns={[
        { head: "Stone", share: 2 },
        { head: "Difficulty, logits", share: 2, isNumber: true },
        { head: "Plots", share: 1, isNumber: true },
        { head: "Found", share: 1, isNumber: true },
        { head: "Strays on a stone", share: 1.5, isNumber: true },
        { head: "Clarity exact", share: 1.5, isNumber: true },
      ]}
      rows={stones.map(({ label, difficulty, rates }) => [
        label,
        isDefined(difficulty) ? `${two(difficulty.value)} ± ${two(difficulty.standardError ?? 0)}` : NONE,
        String(rates.plots),
        toFigure(rates.detection, toPercent),
        toFigure(rates.straysPerPlot, one),
        toFigure(rates.grades.clarity?.exact, toPercent),
      ])}
    />
  );
}

function Students({ report: { students } }: { report: SectionReport }) {
  return (
    <PaperTable
      title="Students"
      columns={[
        { head: "Student", share: 3 },
        { head: "Plots", share: 1, isNumber: true },
        { head: "Points", share: 1, isNumber: true },
        { head: "Exact", share: 1, isNumber: true },
        { head: "Bias, steps", share: 1.2, isNumber: true },
        { head: "Found", share: 1, isNumber: true },
        { head: "Strays on a stone", share: 1.5, isNumber: true },
      ]}
      rows={students.map(({ name, rates }) => [
        name,
        String(rates.plots),
        toFigure(rates.meanTotal, one),
        toFigure(rates.grades.clarity?.exact, toPercent),
        toFigure(rates.grades.clarity?.bias, two),
        toFigure(rates.detection, toPercent),
        toFigure(rates.straysPerPlot, one),
      ])}
    />
  );
}

/** The report of one section. What it may hold is what `getSectionReport` gave to whoever asks. */
export function SectionDocument({ report, paper }: { report: SectionReport; paper: PaperSize }) {
  const shown = report.exercises.filter(({ isShown }) => isShown);
  const isPart = shown.length < report.exercises.length;
  return (
    <Document title="Section report" producer="Loupework" creator="Loupework">
      <Page size={[...PAPER_POINTS[paper]]} style={styles.page}>
        <Text style={[styles.title, { marginBottom: 4 }]}>{report.name}</Text>
        <Text style={styles.muted}>
          {report.term}
          {report.instructors.length === 0 ? "" : `, taught by ${report.instructors.join(", ")}`}.{" "}
          {report.rates.plots} plots scored
          {isPart ? ` of ${shown.map(({ title }) => title).join(", ")}` : ""}.
        </Text>
        <View style={styles.rule} />
        <Headlines report={report} />
        <PaperTable
          title="Needs a word"
          columns={[
            { head: "Student", share: 1 },
            { head: "What", share: 1 },
            { head: "On which numbers", share: 3 },
          ]}
          rows={report.needs.map(({ name, kind, evidence }) => [name, NEED_WORDS[kind], evidence])}
        />
        <Grades report={report} />
        <Characteristics report={report} />
        <Strays report={report} />
        <Stones report={report} />
        <Students report={report} />
        <Text style={[styles.muted, { marginTop: 10, fontSize: 8.5 }]}>
          Intervals are at 95 %; shares of the section allow for one student&apos;s marks being alike. All
          plots that are scored count, released or not.
          {report.leftOut.length > 0 &&
            ` Left out, as whoever printed this is reading them blind: ${report.leftOut.join(", ")}.`}
        </Text>
        <PaperFoot what={`Section report, ${report.name}, ${report.term}`} />
      </Page>
    </Document>
  );
}
