import { HeadlineFigures } from "@/components/section/headline-figures";
import { listHeadlines } from "@/components/section/list-headlines";
import { NeedsList } from "@/components/section/needs-list";
import classes from "@/components/section/section-board.module.css";
import { SectionGrades } from "@/components/section/section-grades";
import { SectionMarks } from "@/components/section/section-marks";
import { SectionScale } from "@/components/section/section-scale";
import { type SectionStudentRow, SectionStudentsTable } from "@/components/section/section-students-table";
import type { SectionReport } from "@/lib/agreement/section-report";
import { isDefined, type Quantity } from "@/lib/agreement/statistic";

const find = (quantity: Quantity | undefined, factor = 1) =>
  quantity !== undefined && isDefined(quantity) ? quantity.value * factor : null;

function toStudentRows({ students }: SectionReport): SectionStudentRow[] {
  return students.map(({ studentId, name, rates, ability }) => ({
    studentId,
    name,
    plots: rates.plots,
    meanTotal: find(rates.meanTotal),
    exact: find(rates.grades.clarity?.exact, 100),
    bias: find(rates.grades.clarity?.bias),
    found: find(rates.detection, 100),
    straysPerPlot: find(rates.straysPerPlot),
    ability: find(ability),
    abilityError: isDefined(ability) ? ability.standardError : null,
    abilityReason: isDefined(ability) ? "" : ability.undefined,
  }));
}

/** A section's report: the headline, who needs a word, then grades, marks and the common scale. */
export function SectionBoard({ report }: { report: SectionReport }) {
  const { sectionId, needs } = report;
  return (
    <div className={classes.root}>
      <HeadlineFigures figures={listHeadlines(report)} />
      <NeedsList sectionId={sectionId} needs={needs} />
      <SectionGrades report={report} />
      <SectionMarks report={report} />
      <SectionScale report={report} />
      <SectionStudentsTable sectionId={sectionId} rows={toStudentRows(report)} />
      <p className={classes.note}>
        Intervals are at 95 %; shares of the section allow for one student&apos;s marks being alike. All plots
        that are scored count, released or not.
        {report.leftOut.length > 0 &&
          ` Left out, as you are reading them blind: ${report.leftOut.join(", ")}.`}
      </p>
    </div>
  );
}
