import { IntervalChart } from "@/components/charts/interval-chart";
import { LineBandChart } from "@/components/charts/line-band-chart";
import { StrayMultiples } from "@/components/charts/stray-multiples";
import { toBiasWords, toNumberWords, toPercent } from "@/components/charts/to-figure-words";
import classes from "@/components/progress/progress-board.module.css";
import { ProgressStonesTable } from "@/components/progress/progress-stones-table";
import { findNextTry, toFindingWords, toKindBias, toKindTrend } from "@/components/progress/progress-words";
import { HeadlineFigures } from "@/components/section/headline-figures";
import { CAUSE_LABELS, toWeekLabel } from "@/components/section/section-words";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { ProgressView } from "@/lib/plot/progress-view";

function Headline({ progress }: { progress: ProgressView }) {
  const { exact, withinOne, bias, detection, straysPerPlot, plots } = progress;
  return (
    <HeadlineFigures
      figures={[
        { label: "Reference marks found", statistic: detection, format: toPercent },
        { label: "Clarity within one step", statistic: withinOne, format: toPercent },
        { label: "Clarity exact", statistic: exact, format: toPercent },
        {
          label: "Clarity bias",
          statistic: bias,
          format: (value) => toNumberWords(value, 1),
          words: toBiasWords(bias),
          basis: "steps of the scale",
        },
        {
          label: "Strays on a stone",
          statistic: straysPerPlot,
          format: (value) => toNumberWords(value, 1),
          basis: `${plots} stones`,
        },
      ]}
    />
  );
}

function Lines({ weeks }: { weeks: ProgressView["weeks"] }) {
  const toPoints = (key: "detection" | "withinOne") =>
    weeks.map((week) => ({
      label: toWeekLabel(week.week),
      statistic: week[key],
      count: key === "detection" ? week.plots : week.graded,
    }));
  return (
    <>
      <LineBandChart
        title="What you find, by week"
        summary={toKindTrend(weeks, "detection", "no reference mark was there to be found")}
        fileName="found-by-week"
        points={toPoints("detection")}
        countLabel="Stones"
        yLabel="reference marks found"
      />
      <LineBandChart
        title="Clarity grades within one step, by week"
        summary={toKindTrend(weeks, "withinOne", "no clarity grade was given")}
        fileName="within-one-by-week"
        points={toPoints("withinOne")}
        countLabel="Grades"
        yLabel="within one step"
      />
    </>
  );
}

/** A student's progress: figures first, then the one thing to try, then how it came about. */
export function ProgressBoard({
  progress,
  debriefHref,
}: {
  progress: ProgressView;
  debriefHref: string | null;
}) {
  const next = findNextTry(progress);
  const { characteristics, weeks, strays } = progress;
  const total = Object.values(strays).reduce((sum, count) => sum + count, 0);
  return (
    <div className={classes.root}>
      <Headline progress={progress} />
      <section className={classes.next} aria-labelledby="next-title">
        <h2 id="next-title">Try next</h2>
        <p>{next ?? "No kind of stray stands out. Go on as you do, and look longer at what hides."}</p>
        <p>{toFindingWords(progress)}</p>
        <p>{toKindBias(progress)}</p>
      </section>
      <div className={classes.charts}>
        <Lines weeks={weeks} />
        <IntervalChart
          title="Found, by characteristic"
          summary={toFindingWords(progress)}
          fileName="found-by-characteristic"
          rows={characteristics.map(({ characteristic, reference, detection }) => ({
            key: characteristic,
            label: toCharacteristicLabel(characteristic),
            statistic: detection,
            count: reference,
          }))}
          rowLabel="Characteristic"
          countLabel="Reference marks seen"
          emptyReason="no reference mark was there to be found"
        />
        <StrayMultiples
          title="Strays by cause, by week"
          summary={
            total === 0 ? "No stray at all: well done." : `${total} strays on ${progress.plots} stones.`
          }
          fileName="strays-by-week"
          causes={CAUSE_LABELS}
          weeks={weeks.map(({ week, plots, strays: own }) => ({
            label: toWeekLabel(week),
            plots,
            strays: own,
          }))}
        />
      </div>
      <ProgressStonesTable stones={progress.stones} debriefHref={debriefHref} />
    </div>
  );
}
