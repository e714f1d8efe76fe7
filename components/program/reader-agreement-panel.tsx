import { IntervalChart } from "@/components/charts/interval-chart";
import { toBiasWords, toNumberWords, toPercent, toStatisticWords } from "@/components/charts/to-figure-words";
import classes from "@/components/program/program.module.css";
import { HeadlineFigures } from "@/components/section/headline-figures";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import type { ReaderAgreement } from "@/lib/agreement/reader-agreement";
import { isDefined, type Statistic } from "@/lib/agreement/statistic";

const toTwo = (value: number) => toNumberWords(value, 2);

/** Chance-corrected agreement of the clarity grades, one coefficient a row. */
function Coefficients({ clarity }: { clarity: ReaderAgreement["clarity"] }) {
  const rows: [string, string, Statistic][] = [
    ["kappa", "Cohen’s kappa", clarity.kappa.unweighted],
    ["linear", "Kappa, linear", clarity.kappa.linear],
    ["quadratic", "Kappa, quadratic", clarity.kappa.quadratic],
    ["ordinal", "Alpha, ordinal", clarity.alpha.ordinal],
    ["ac1", "AC1", clarity.ac1],
  ];
  const best = rows.find(([key]) => key === "quadratic")?.[2];
  return (
    <IntervalChart
      title="Clarity grades of two readers"
      summary={
        best !== undefined && isDefined(best)
          ? `Over ${clarity.items} stones: quadratic kappa ${toStatisticWords(best, toTwo)}. 1 is full agreement, 0 what chance gives.`
          : `No coefficient: ${best === undefined || isDefined(best) ? "nothing was graded" : best.undefined}.`
      }
      fileName="readers-clarity"
      rows={rows.map(([key, label, statistic]) => ({ key, label, statistic, count: clarity.items }))}
      rowLabel="Coefficient"
      countLabel="Stones"
      domain={[-1, 1]}
      format={toTwo}
      level={{ value: 0, label: "chance" }}
    />
  );
}

const toSurname = (name: string) => name.split(" ").at(-1) ?? name;

/** Who read whose references. */
function Pairs({ pairs }: Pick<ReaderAgreement, "pairs">) {
  return (
    <IntervalChart
      title="Marks in common, by readers"
      summary="The share of all marks of either reader that both have. Few stones make wide intervals: pairs are not to be ranked."
      fileName="readers-pairs"
      rows={pairs.map(({ first, second, readings, inCommon }) => ({
        key: `${first} ${second}`,
        label: `${toSurname(second)} on ${toSurname(first)}`,
        fullLabel: `${second}, on a reference of ${first}’s`,
        statistic: inCommon,
        count: readings,
      }))}
      rowLabel="Second reader"
      countLabel="Stones"
    />
  );
}

/** How near second readers come to the references. */
export function ReaderAgreementPanel({ readers }: { readers: ReaderAgreement }) {
  if (readers.readings === 0) {
    return (
      <EmptyState
        title="No second reading is handed in yet"
        action={<LinkButton href="/trays">Trays</LinkButton>}
      >
        On the page of a stone a colleague who has not seen its reference plots it; the two are compared here
        by the engine that scores students.
      </EmptyState>
    );
  }
  const { inCommon, named, clarity, readings, otherScale } = readers;
  return (
    <>
      <HeadlineFigures
        figures={[
          {
            label: "Marks in common",
            statistic: inCommon,
            format: toPercent,
            basis: readings === 1 ? "1 stone" : `${readings} stones`,
          },
          { label: "Of those, named the same", statistic: named, format: toPercent },
          {
            label: "Clarity exact",
            statistic: clarity.exact,
            format: toPercent,
            basis: `${clarity.items} graded`,
          },
          { label: "Clarity within one step", statistic: clarity.withinOne, format: toPercent },
          {
            label: "Second reader’s bias",
            statistic: clarity.bias,
            format: (value) => toNumberWords(value, 1),
            words: toBiasWords(clarity.bias),
            basis: "steps of the scale",
          },
        ]}
      />
      <div className={classes.charts}>
        <Coefficients clarity={clarity} />
        <Pairs pairs={readers.pairs} />
      </div>
      {otherScale > 0 && (
        <p className="muted">Clarity of {otherScale} more is graded on another scale and not counted here.</p>
      )}
    </>
  );
}
