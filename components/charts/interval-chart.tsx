import { Group } from "@visx/group";
import { scaleLinear } from "@visx/scale";
import { ChartFrame, type ChartWords } from "@/components/charts/chart-frame";
import {
  ACCENT,
  AXIS_TEXT,
  CHART_WIDTH,
  INK,
  LABEL_TEXT,
  LINE,
  STRONG_LINE,
  TEXT_SIZE,
} from "@/components/charts/chart-style";
import { STATISTIC_HEADS, toPercent, toStatisticCells } from "@/components/charts/to-figure-words";
import { isDefined, type Statistic } from "@/lib/agreement/statistic";

export interface IntervalRow {
  readonly key: string;
  readonly label: string;
  /** In full, for the table and the pointer, where `label` is short. */
  readonly fullLabel?: string;
  readonly statistic: Statistic;
  /** What it rests on: marks, say. */
  readonly count: number;
  /** Drawn with a filled square and the accent: it stands out from the rest, and the words say why. */
  readonly isMarked?: boolean;
}

export interface IntervalChartProps extends ChartWords {
  readonly rows: readonly IntervalRow[];
  /** What a row is, for the head of the table: `Characteristic`. */
  readonly rowLabel: string;
  readonly countLabel: string;
  /** 0 to 1 when left out. Intervals are cut at its ends. */
  readonly domain?: readonly [number, number];
  readonly format?: (value: number) => string;
  /** A value to hold the rows against, drawn as a dashed line and named over it. */
  readonly level?: { readonly value: number; readonly label: string };
  /** Why there is no row, after "Nothing to draw: ". */
  readonly emptyReason?: string;
  /** So many rows are drawn; the table has all. */
  readonly mostRows?: number;
}

const ROW = 27;
const MARGIN = { top: 24, right: 62, bottom: 26, left: 136 };
const INNER = CHART_WIDTH - MARGIN.left - MARGIN.right;
/** Longer labels are cut; the table has them whole. */
const LABEL_LENGTH = 19;
const REASON_LENGTH = 34;

const cut = (text: string, most: number) => (text.length <= most ? text : `${text.slice(0, most - 1)}…`);

interface RowDrawingProps {
  readonly row: IntervalRow;
  readonly x: (value: number) => number;
  readonly format: (value: number) => string;
}

function RowDrawing({ row, x, format }: RowDrawingProps) {
  const { label, fullLabel = label, statistic, count, isMarked = false } = row;
  const paint = isMarked ? ACCENT : INK;
  return (
    <>
      <text {...LABEL_TEXT} x={-10} dy="0.35em" textAnchor="end" fontWeight={isMarked ? 640 : 400}>
        {cut(label, LABEL_LENGTH)}
        <title>{`${fullLabel}, ${count}`}</title>
      </text>
      {isDefined(statistic) ? (
        <>
          <line x1={x(statistic.low)} x2={x(statistic.high)} stroke={paint} strokeWidth={2} />
          {[statistic.low, statistic.high].map((end, place) => (
            <line
              key={place === 0 ? "low" : "high"}
              x1={x(end)}
              x2={x(end)}
              y1={-4}
              y2={4}
              stroke={paint}
              strokeWidth={1.5}
            />
          ))}
          {isMarked ? (
            <rect x={x(statistic.value) - 5} y={-5} width={10} height={10} fill={paint} />
          ) : (
            <circle cx={x(statistic.value)} r={4.5} fill={paint} />
          )}
          <text {...LABEL_TEXT} x={INNER + MARGIN.right - 2} dy="0.35em" textAnchor="end">
            {format(statistic.value)}
          </text>
        </>
      ) : (
        <text {...AXIS_TEXT} fontSize={TEXT_SIZE - 1} x={4} dy="0.35em" fontStyle="italic">
          {cut(statistic.undefined, REASON_LENGTH)}
          <title>{statistic.undefined}</title>
        </text>
      )}
    </>
  );
}

/** A dot with its 95 % interval for each row, on one scale; a row without a value says why. */
export function IntervalChart(props: IntervalChartProps) {
  const {
    rows,
    rowLabel,
    countLabel,
    domain = [0, 1],
    format = toPercent,
    level,
    emptyReason,
    ...rest
  } = props;
  const { mostRows = 24, ...words } = rest;
  const drawn = rows.slice(0, mostRows);
  const scale = scaleLinear<number>({ domain: [...domain], range: [0, INNER], clamp: true });
  const x = (value: number) => scale(value);
  const height = drawn.length * ROW;
  return (
    <ChartFrame
      {...words}
      table={{
        header: [rowLabel, countLabel, ...STATISTIC_HEADS],
        rows: rows.map(({ label, fullLabel = label, count, statistic }) => [
          fullLabel,
          count,
          ...toStatisticCells(statistic),
        ]),
      }}
      empty={rows.length === 0 ? (emptyReason ?? "there is nothing to compare yet") : undefined}
    >
      <svg viewBox={`0 0 ${CHART_WIDTH} ${height + MARGIN.top + MARGIN.bottom}`} role="presentation">
        <Group left={MARGIN.left} top={MARGIN.top}>
          {scale.ticks(4).map((tick) => (
            <g key={tick} transform={`translate(${x(tick)} 0)`}>
              <line y1={0} y2={height} stroke={LINE} />
              <text {...AXIS_TEXT} y={height + 17} textAnchor="middle">
                {format(tick)}
              </text>
            </g>
          ))}
          {level && (
            <g transform={`translate(${x(level.value)} 0)`}>
              <line y1={-4} y2={height} stroke={STRONG_LINE} strokeWidth={1.5} strokeDasharray="5 4" />
              <text {...AXIS_TEXT} y={-9} textAnchor="middle">
                {level.label}
              </text>
            </g>
          )}
          {drawn.map((row, place) => (
            <Group key={row.key} top={place * ROW + ROW / 2}>
              <RowDrawing row={row} x={x} format={format} />
            </Group>
          ))}
        </Group>
      </svg>
    </ChartFrame>
  );
}
