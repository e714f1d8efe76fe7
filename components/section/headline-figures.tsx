import type { ReactNode } from "react";
import classes from "@/components/section/headline-figures.module.css";
import { isDefined, type Statistic } from "@/lib/agreement/statistic";

export interface HeadlineFigure {
  readonly label: string;
  readonly statistic: Statistic;
  readonly format: (value: number) => string;
  /** Stands in the place of the number where the number says less than words: a bias. */
  readonly words?: string;
  /** What it rests on, under the interval. */
  readonly basis?: ReactNode;
}

/** The few figures that are read first, each with its interval, or with the reason why there is none. */
export function HeadlineFigures({ figures }: { figures: readonly HeadlineFigure[] }) {
  return (
    <dl className={classes.root}>
      {figures.map(({ label, statistic, format, words, basis }) => (
        <div key={label} className={classes.figure}>
          <dt>{label}</dt>
          {isDefined(statistic) ? (
            <>
              <dd className={words === undefined ? classes.value : classes.words}>
                {words ?? format(statistic.value)}
              </dd>
              <dd className={classes.basis}>
                {words !== undefined && `${format(statistic.value)}, `}
                {format(statistic.low)} to {format(statistic.high)}
                {basis !== undefined && <> · {basis}</>}
              </dd>
            </>
          ) : (
            <dd className={classes.basis}>No figure: {statistic.undefined}.</dd>
          )}
        </div>
      ))}
    </dl>
  );
}
