import { Group } from "@visx/group";
import { scaleLinear } from "@visx/scale";
import { Area, LinePath } from "@visx/shape";
import { ChartAxes } from "@/components/charts/chart-axes";
import { ChartFrame, type ChartWords } from "@/components/charts/chart-frame";
import { BAND, CHART_WIDTH, INK, LABEL_TEXT, STRONG_LINE, SURFACE } from "@/components/charts/chart-style";
import { STATISTIC_HEADS, toPercent, toStatisticCells } from "@/components/charts/to-figure-words";
import { isDefined, type Statistic } from "@/lib/agreement/statistic";

export interface LinePoint {
  /** Of its place in time, as it stands under the axis and in the table. */
  readonly label: string;
  readonly statistic: Statistic;
  /** What it rests on: plots, say. */
  readonly count: number;
}

export interface LineBandChartProps extends ChartWords {
  /** In order of time, evenly spaced. */
  readonly points: readonly LinePoint[];
  readonly countLabel: string;
  readonly yLabel?: string;
  /** Of the values; 0 to 1 when left out. */
  readonly domain?: readonly [number, number];
  readonly format?: (value: number) => string;
  /** Drawn across and named at its end. */
  readonly level?: { readonly value: number; readonly label: string };
}

const MARGIN = { top: 30, right: 14, bottom: 30, left: 46 };
const HEIGHT = 210;

type Defined = LinePoint & { readonly place: number; readonly value: number; low: number; high: number };

/** Stretches of points that follow one another without a gap. */
function listStretches(points: readonly LinePoint[]): Defined[][] {
  const stretches: Defined[][] = [[]];
  for (const [place, point] of points.entries()) {
    if (isDefined(point.statistic)) {
      const { value, low, high } = point.statistic;
      stretches.at(-1)?.push({ ...point, place, value, low, high });
    } else if (stretches.at(-1)?.length) stretches.push([]);
  }
  return stretches.filter((stretch) => stretch.length > 0);
}

/** A few places to put ticks at, the first and last among them. */
export function listTickPlaces(count: number, most: number): number[] {
  if (count <= most) return Array.from({ length: count }, (_, place) => place);
  const step = Math.ceil((count - 1) / (most - 1));
  return Array.from({ length: most }, (_, i) => i * step).filter((place) => place < count);
}

/** A statistic over time: a line through its values with the band of their 95 % intervals. A gap where there is none. */
export function LineBandChart(props: LineBandChartProps) {
  const { points, countLabel, yLabel, domain = [0, 1], format = toPercent, level, ...words } = props;
  const stretches = listStretches(points);
  const width = CHART_WIDTH - MARGIN.left - MARGIN.right;
  const height = HEIGHT - MARGIN.top - MARGIN.bottom;
  const x = scaleLinear<number>({ domain: [0, Math.max(1, points.length - 1)], range: [8, width - 8] });
  const y = scaleLinear<number>({ domain: [...domain], range: [height, 0] });
  const at = ({ place }: Defined) => x(place);
  const reason = points.map(({ statistic }) => statistic).find((one) => !isDefined(one));
  return (
    <ChartFrame
      {...words}
      table={{
        header: ["Week", countLabel, ...STATISTIC_HEADS],
        rows: points.map(({ label, count, statistic }) => [label, count, ...toStatisticCells(statistic)]),
      }}
      empty={
        stretches.length > 0
          ? undefined
          : reason && !isDefined(reason)
            ? reason.undefined
            : "nothing was handed in yet"
      }
    >
      <svg viewBox={`0 0 ${CHART_WIDTH} ${HEIGHT}`} role="presentation">
        <Group left={MARGIN.left} top={MARGIN.top}>
          {stretches.map((stretch) => (
            <Area
              key={stretch[0]?.place}
              data={stretch}
              x={at}
              y0={({ low }) => y(low)}
              y1={({ high }) => y(high)}
              fill={BAND}
              stroke={STRONG_LINE}
              strokeWidth={0.75}
              strokeDasharray="2 2"
            />
          ))}
          <ChartAxes
            x={x}
            y={y}
            width={width}
            height={height}
            xTicks={listTickPlaces(points.length, 6)}
            yTicks={y.ticks(5)}
            formatX={(place) => points[place]?.label ?? ""}
            formatY={format}
            {...(yLabel === undefined ? {} : { yLabel })}
          />
          {level && (
            <line
              x1={0}
              x2={width}
              y1={y(level.value)}
              y2={y(level.value)}
              stroke={STRONG_LINE}
              strokeDasharray="6 4"
            />
          )}
          {stretches.map((stretch) => (
            <LinePath
              key={stretch[0]?.place}
              data={stretch}
              x={at}
              y={({ value }) => y(value)}
              stroke={INK}
              strokeWidth={2}
            />
          ))}
          {stretches.flat().map((point) => (
            <g key={point.place}>
              <line x1={at(point)} x2={at(point)} y1={y(point.low)} y2={y(point.high)} stroke={STRONG_LINE} />
              <circle
                cx={at(point)}
                cy={y(point.value)}
                r={3.5}
                fill={SURFACE}
                stroke={INK}
                strokeWidth={2}
              />
            </g>
          ))}
          {level && (
            <text {...LABEL_TEXT} x={width} y={y(level.value) - 5} textAnchor="end">
              {level.label}
            </text>
          )}
        </Group>
      </svg>
    </ChartFrame>
  );
}
