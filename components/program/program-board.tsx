import { FunnelChart } from "@/components/charts/funnel-chart";
import { IntervalChart } from "@/components/charts/interval-chart";
import { toBiasWords, toNumberWords, toPercent } from "@/components/charts/to-figure-words";
import { MeasureTabs } from "@/components/program/measure-tabs";
import classes from "@/components/program/program.module.css";
import {
  type ProgramGroupRow,
  ProgramGroupsTable,
  type ShareCell,
} from "@/components/program/program-groups-table";
import { ProgramStonesTable } from "@/components/program/program-stones-table";
import { MEASURE_WORDS, toFunnelWords, toSpreadWords } from "@/components/program/program-words";
import { ReaderAgreementPanel } from "@/components/program/reader-agreement-panel";
import { HeadlineFigures } from "@/components/section/headline-figures";
import { STONE_RULES } from "@/lib/agreement/judge-stone";
import type { ProgramGroup, ProgramMeasure, ProgramReport } from "@/lib/agreement/program-report";
import { isDefined, type Statistic } from "@/lib/agreement/statistic";

function toCell(statistic: Statistic, factor = 1): ShareCell {
  return isDefined(statistic)
    ? {
        value: statistic.value * factor,
        low: statistic.low * factor,
        high: statistic.high * factor,
        reason: "",
      }
    : { value: null, low: null, high: null, reason: statistic.undefined };
}

function toRow(group: ProgramGroup, href: string | null): ProgramGroupRow {
  const { shares, bias, straysPerPlot, key, label, detail, sections, students, plots } = group;
  return {
    key,
    label,
    detail,
    sections,
    students,
    plots,
    href,
    found: toCell(shares.found.share, 100),
    exact: toCell(shares.exact.share, 100),
    withinOne: toCell(shares["within-one"].share, 100),
    bias: toCell(bias),
    straysPerPlot: toCell(straysPerPlot),
  };
}

function Headline({ whole }: { whole: ProgramGroup }) {
  const { shares, bias, straysPerPlot, plots } = whole;
  return (
    <HeadlineFigures
      figures={[
        {
          label: MEASURE_WORDS.found.title,
          statistic: shares.found.share,
          format: toPercent,
          basis: `${shares.found.trials} seen`,
        },
        {
          label: MEASURE_WORDS.exact.title,
          statistic: shares.exact.share,
          format: toPercent,
          basis: `${shares.exact.trials} grades`,
        },
        {
          label: MEASURE_WORDS["within-one"].title,
          statistic: shares["within-one"].share,
          format: toPercent,
        },
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
          basis: `${plots} plots`,
        },
      ]}
    />
  );
}

function SideBySide({ report, measure }: { report: ProgramReport; measure: ProgramMeasure }) {
  const { title, hits, trials } = MEASURE_WORDS[measure];
  const { sections, terms, instructors, whole, designEffects } = report;
  const { share } = whole.shares[measure];
  const level = isDefined(share) ? { level: { value: share.value, label: "program" } } : {};
  const toRows = (groups: readonly ProgramGroup[]) =>
    groups.map(({ key, label, shares }) => ({
      key,
      label,
      statistic: shares[measure].share,
      count: shares[measure].trials,
    }));
  return (
    <div className={classes.charts}>
      <FunnelChart
        title={`${title}, by section`}
        summary={toFunnelWords(report, measure)}
        fileName={`program-${measure}-sections`}
        groups={sections.map(({ key, label, shares }) => ({
          key,
          label,
          hits: shares[measure].hits,
          trials: shares[measure].trials,
        }))}
        designEffect={designEffects[measure]}
        groupLabel="Section"
        trialLabel={trials}
        hitLabel={hits}
      />
      <div className={classes.column}>
        <IntervalChart
          title={`${title}, by term`}
          summary={toSpreadWords(terms, measure)}
          fileName={`program-${measure}-terms`}
          rows={toRows(terms)}
          rowLabel="Term"
          countLabel={trials}
          {...level}
        />
        <IntervalChart
          title={`${title}, by instructor`}
          summary={`${toSpreadWords(instructors, measure)} A section that two teach counts for both. Students and stones differ: this measures sections, not teaching.`}
          fileName={`program-${measure}-instructors`}
          rows={toRows(instructors)}
          rowLabel="Instructor"
          countLabel={trials}
          {...level}
        />
      </div>
    </div>
  );
}

/** A program's report: the headline, sections, terms and instructors side by side, stones that mislead, and its readers. */
export function ProgramBoard({ report, measure }: { report: ProgramReport; measure: ProgramMeasure }) {
  const { whole, sections, terms, instructors, stones, readers, leftOut } = report;
  return (
    <div className={classes.root}>
      <Headline whole={whole} />
      <section className={classes.part} aria-labelledby="side-by-side">
        <div className={classes.head}>
          <h2 id="side-by-side">Side by side</h2>
          <MeasureTabs shown={measure} />
        </div>
        <SideBySide report={report} measure={measure} />
        <ProgramGroupsTable
          caption="Sections"
          csvName="program-sections"
          rowLabel="Section"
          rows={sections.map((group) => toRow(group, `/sections/${group.key}`))}
          hasSections={false}
        />
        <ProgramGroupsTable
          caption="Terms and instructors"
          csvName="program-terms-and-instructors"
          rowLabel="Term or instructor"
          rows={[...terms, ...instructors].map((group) => toRow(group, null))}
          hasSections
        />
      </section>
      <section className={classes.part} aria-labelledby="stones-that-mislead">
        <h2 id="stones-that-mislead">Stones that mislead</h2>
        <p className={classes.note}>
          A stone is named where, of at least {STONE_RULES.fewestPlots} plots, its marks are found far less
          often than the program&apos;s, where echoes, glints and unexplained strays pile up on it, or where
          two readers disagree. Where on the stone they pile up, its own page shows.
        </p>
        <ProgramStonesTable
          rows={stones.map(({ found, exact, ...stone }) => ({
            ...stone,
            found: isDefined(found) ? found.value * 100 : null,
            exact: isDefined(exact) ? exact.value * 100 : null,
          }))}
        />
      </section>
      <section className={classes.part} aria-labelledby="readers">
        <h2 id="readers">Agreement between instructors</h2>
        <ReaderAgreementPanel readers={readers} />
      </section>
      <p className={classes.note}>
        Intervals are at 95 % and allow for one student&apos;s marks being alike. All plots that are scored
        count, released or not.
        {leftOut.length > 0 && ` Stones left out, as you are reading them blind: ${leftOut.join(", ")}.`}
      </p>
    </div>
  );
}
