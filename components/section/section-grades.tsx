import { ConfusionMatrix } from "@/components/charts/confusion-matrix";
import { LineBandChart } from "@/components/charts/line-band-chart";
import { CoefficientsTable } from "@/components/section/coefficients-table";
import classes from "@/components/section/section-board.module.css";
import { toGradeMixUpWords, toTrendWords, toWeekLabel } from "@/components/section/section-words";
import type { SectionReport } from "@/lib/agreement/section-report";
import { toUndefined } from "@/lib/agreement/statistic";

/** How the section's clarity grades agree with the references'. */
export function SectionGrades({ report }: { report: SectionReport }) {
  const { rates, weeks, coefficients, otherScale } = report;
  const clarity = rates.grades.clarity;
  const points = weeks.map(({ week, rates: own }) => ({
    label: toWeekLabel(week),
    statistic: own.grades.clarity?.withinOne ?? toUndefined("nothing was graded"),
    count: own.grades.clarity?.graded ?? 0,
  }));
  return (
    <section className={classes.part} aria-labelledby="grades-title">
      <h2 id="grades-title">Clarity grades</h2>
      {otherScale.clarity !== undefined && (
        <p className={classes.note}>
          {otherScale.clarity} plots graded on another clarity scale are left out of these figures.
        </p>
      )}
      <div className={classes.charts}>
        <ConfusionMatrix
          title="Reference and plotted grade"
          summary={toGradeMixUpWords(clarity)}
          fileName="clarity-grades"
          confusion={clarity?.confusion ?? { rows: [], columns: [], counts: [] }}
          rowLabel="Reference"
          columnLabel="plotted"
          emptyReason="no clarity grade was given yet"
          hidesEmpty
        />
        <div className={classes.part}>
          <LineBandChart
            title="Within one step, by week"
            summary={toTrendWords(points)}
            fileName="within-one-by-week"
            points={points}
            countLabel="Grades"
            yLabel="clarity grades within one step"
          />
          <CoefficientsTable clarity={clarity} coefficients={coefficients} />
        </div>
      </div>
    </section>
  );
}
