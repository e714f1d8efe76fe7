import { Group } from "@visx/group";
import { scaleLinear } from "@visx/scale";
import { Bar } from "@visx/shape";
import { ChartFrame, type ChartWords } from "@/components/charts/chart-frame";
import { AXIS_TEXT, CHART_WIDTH, INK, LABEL_TEXT, LINE, STRONG_LINE } from "@/components/charts/chart-style";
import { listTickPlaces } from "@/components/charts/line-band-chart";
import { toNumberWords } from "@/components/charts/to-figure-words";
import { getCount, sumTally, type Tally } from "@/lib/agreement/tally";

export interface StrayWeek {
  readonly label: string;
  readonly plots: number;
  readonly strays: Tally;
}

export interface StrayMultiplesProps extends ChartWords {
  /** In order of time. */
  readonly weeks: readonly StrayWeek[];
  /** Causes in the order of their strips, with the words they are read by; those without a stray are left out. */
  readonly causes: readonly (readonly [cause: string, label: string])[];
}

const MARGIN = { top: 20, right: 14, bottom: 26, left: 104 };
const WIDTH = CHART_WIDTH - MARGIN.left - MARGIN.right;
const STRIP = 42;
const ROOM = 12;

/** Strays on a stone by cause, one strip of bars for each cause over the weeks, all on one scale. */
export function StrayMultiples({ weeks, causes, ...words }: StrayMultiplesProps) {
  const shown = causes.filter(([cause]) => weeks.some(({ strays }) => getCount(strays, cause) > 0));
  const rateOf = ({ plots, strays }: StrayWeek, cause: string) =>
    plots === 0 ? null : getCount(strays, cause) / plots;
  const most = Math.max(0.2, ...weeks.flatMap((week) => shown.map(([cause]) => rateOf(week, cause) ?? 0)));
  const y = scaleLinear<number>({ domain: [0, most], range: [0, STRIP - ROOM] });
  const step = WIDTH / Math.max(1, weeks.length);
  const barWidth = Math.min(26, step * 0.7);
  const plots = weeks.reduce((sum, week) => sum + week.plots, 0);
  const isEmpty = plots === 0 || weeks.every(({ strays }) => sumTally(strays) === 0);
  return (
    <ChartFrame
      {...words}
      table={{
        header: ["Week", "Plots", ...shown.map(([, label]) => label)],
        rows: weeks.map((week) => [
          week.label,
          week.plots,
          ...shown.map(([cause]) => {
            const rate = rateOf(week, cause);
            return rate === null ? null : Number(rate.toFixed(3));
          }),
        ]),
      }}
      empty={isEmpty ? (plots === 0 ? "nothing was handed in yet" : "there was no stray") : undefined}
    >
      <svg
        viewBox={`0 0 ${CHART_WIDTH} ${MARGIN.top + shown.length * STRIP + MARGIN.bottom}`}
        role="presentation"
      >
        <text {...AXIS_TEXT} x={CHART_WIDTH - MARGIN.right} y={13} textAnchor="end">
          strays on a stone
        </text>
        {shown.map(([cause, label], strip) => {
          const rates = weeks.map((week) => rateOf(week, cause));
          const highest = Math.max(...rates.map((rate) => rate ?? 0));
          const peak = rates.indexOf(highest);
          return (
            <Group key={cause} left={MARGIN.left} top={MARGIN.top + (strip + 1) * STRIP}>
              <text {...LABEL_TEXT} x={-10} y={-4} textAnchor="end">
                {label}
              </text>
              <line x1={0} x2={WIDTH} stroke={strip === shown.length - 1 ? STRONG_LINE : LINE} />
              {rates.map((rate, week) =>
                rate === null || rate === 0 ? null : (
                  <Bar
                    key={weeks[week]?.label}
                    x={(week + 0.5) * step - barWidth / 2}
                    y={-y(rate)}
                    width={barWidth}
                    height={y(rate)}
                    fill={INK}
                  />
                ),
              )}
              <text {...AXIS_TEXT} x={(peak + 0.5) * step} y={-y(highest) - 3} textAnchor="middle">
                {toNumberWords(highest, highest < 0.1 ? 2 : 1)}
              </text>
            </Group>
          );
        })}
        <Group left={MARGIN.left} top={MARGIN.top + shown.length * STRIP}>
          {listTickPlaces(weeks.length, 5).map((place) => (
            <text key={place} {...AXIS_TEXT} x={(place + 0.5) * step} y={18} textAnchor="middle">
              {weeks[place]?.label}
            </text>
          ))}
        </Group>
      </svg>
    </ChartFrame>
  );
}
