import { ConfusionMatrix } from "@/components/charts/confusion-matrix";
import { FreeResponseChart } from "@/components/charts/free-response-chart";
import { IntervalChart } from "@/components/charts/interval-chart";
import { StrayMultiples } from "@/components/charts/stray-multiples";
import classes from "@/components/section/section-board.module.css";
import {
  CAUSE_LABELS,
  toCharacteristicMixUpWords,
  toDetectionWords,
  toFreeResponseWords,
  toStrayWords,
  toWeekLabel,
} from "@/components/section/section-words";
import { toCharacteristicConfusion } from "@/lib/agreement/confusion-table";
import type { SectionReport } from "@/lib/agreement/section-report";
import { isDefined, toUndefined } from "@/lib/agreement/statistic";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";

/** What the section finds, what it calls it, and what it draws that is not there. */
export function SectionMarks({ report: { rates, clusters, weeks } }: { report: SectionReport }) {
  const rows = rates.characteristics
    .filter(({ reference }) => reference > 0)
    .map(({ characteristic, reference }) => ({
      key: characteristic,
      label: toCharacteristicLabel(characteristic),
      statistic: clusters.characteristics[characteristic] ?? toUndefined("no reference mark"),
      count: reference,
    }))
    .sort(
      ({ statistic: a }, { statistic: b }) => (isDefined(a) ? a.value : 2) - (isDefined(b) ? b.value : 2),
    );
  const confusion = toCharacteristicConfusion(
    Object.fromEntries(rates.characteristics.map((own) => [own.characteristic, own])),
  );
  return (
    <section className={classes.part} aria-labelledby="marks-title">
      <h2 id="marks-title">Marks</h2>
      <div className={classes.charts}>
        <IntervalChart
          title="Found, by characteristic"
          summary={toDetectionWords(rows)}
          fileName="found-by-characteristic"
          rows={rows}
          rowLabel="Characteristic"
          countLabel="Reference marks seen"
          emptyReason="no reference mark was there to be found"
          {...(isDefined(clusters.detection)
            ? { level: { value: clusters.detection.value, label: "all marks" } }
            : {})}
        />
        <StrayMultiples
          title="Strays by cause, by week"
          summary={toStrayWords(rates)}
          fileName="strays-by-week"
          causes={CAUSE_LABELS}
          weeks={weeks.map(({ week, rates: own }) => ({
            label: toWeekLabel(week),
            plots: own.plots,
            strays: own.strays,
          }))}
        />
        <FreeResponseChart
          title="Found against strays, by confidence"
          summary={toFreeResponseWords(rates.freeResponse)}
          fileName="free-response"
          points={rates.freeResponse}
        />
        <div className={classes.wide}>
          <ConfusionMatrix
            title="What found marks were called"
            summary={toCharacteristicMixUpWords(confusion, toCharacteristicLabel)}
            fileName="characteristics"
            confusion={confusion}
            rowLabel="Reference"
            columnLabel="plotted"
            emptyReason="no reference mark was there to be found"
            toLabel={toCharacteristicLabel}
          />
        </div>
      </div>
    </section>
  );
}
