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
} from "@/components/charts/chart-style";
import { toNumberWords } from "@/components/charts/to-figure-words";

export interface MapPlace {
  readonly key: string;
  readonly label: string;
  /** Logits; null beyond range. */
  readonly at: number | null;
  readonly standardError: number | null;
  /** Why it has no place. */
  readonly reason: string;
}

export interface PersonItemMapProps extends ChartWords {
  /** Higher is abler. */
  readonly students: readonly MapPlace[];
  /** Higher is harder. */
  readonly marks: readonly MapPlace[];
}

const MARGIN = { top: 30, right: 12, bottom: 30, left: 12 };
const WIDTH = CHART_WIDTH - MARGIN.left - MARGIN.right;
const BINS = 45;
const SIGN = 8;
const AXIS_ROOM = 24;
const MOST_STACKED = 14;

interface Stack {
  readonly bin: number;
  readonly count: number;
}

/** How many lie in each bin of the scale. */
function stackUp(places: readonly MapPlace[], low: number, high: number): Stack[] {
  const counts = new Map<number, number>();
  for (const { at } of places) {
    if (at === null) continue;
    const bin = Math.min(BINS - 1, Math.max(0, Math.floor(((at - low) / (high - low)) * BINS)));
    counts.set(bin, (counts.get(bin) ?? 0) + 1);
  }
  return [...counts].map(([bin, count]) => ({ bin, count }));
}

const findTallest = (stacks: readonly Stack[]) =>
  stacks.reduce((most, { count }) => Math.max(most, count), 1);

/** One sign for `per` of them, so that a tall stack stays on the sheet. */
function Signs({ stacks, per, isUp }: { stacks: readonly Stack[]; per: number; isUp: boolean }) {
  const step = WIDTH / BINS;
  return stacks.flatMap(({ bin, count }) =>
    Array.from({ length: Math.ceil(count / per) }, (_, i) => {
      const [cx, cy] = [(bin + 0.5) * step, (isUp ? -1 : 1) * (i + 0.6) * SIGN];
      const key = `${bin} ${i}`;
      return isUp ? (
        <circle key={key} cx={cx} cy={cy} r={3.3} fill={INK} />
      ) : (
        <path
          key={key}
          d={`M${cx} ${cy - 4}l4 4l-4 4l-4 -4z`}
          fill="none"
          stroke={ACCENT}
          strokeWidth={1.5}
        />
      );
    }),
  );
}

/** Students as dots over one scale, reference marks as diamonds under it: who is where a mark is an even chance. */
export function PersonItemMap({ students, marks, ...words }: PersonItemMapProps) {
  const all = [...students, ...marks].flatMap(({ at }) => (at === null ? [] : [at]));
  const low = Math.floor(Math.min(-1, ...all));
  const high = Math.ceil(Math.max(1, ...all) + 1e-9);
  const [over, under] = [stackUp(students, low, high), stackUp(marks, low, high)];
  const perStudent = Math.ceil(findTallest(over) / MOST_STACKED);
  const perMark = Math.ceil(findTallest(under) / MOST_STACKED);
  const up = Math.ceil(findTallest(over) / perStudent) * SIGN + 6;
  const down = Math.ceil(findTallest(under) / perMark) * SIGN + 6;
  const x = scaleLinear<number>({ domain: [low, high], range: [0, WIDTH] });
  const toRow = (kind: string) => (place: MapPlace) => [
    place.label,
    kind,
    place.at === null ? null : Number(place.at.toFixed(3)),
    place.standardError === null ? null : Number(place.standardError.toFixed(3)),
    place.at === null ? place.reason : "",
  ];
  return (
    <ChartFrame
      {...words}
      table={{
        header: ["Name", "What", "Place (logits)", "Standard error", "Why it has no place"],
        rows: [...students.map(toRow("student")), ...marks.map(toRow("reference mark"))],
      }}
      empty={all.length === 0 ? "no two marks can be compared yet" : undefined}
    >
      <svg
        viewBox={`0 0 ${CHART_WIDTH} ${MARGIN.top + up + AXIS_ROOM + down + MARGIN.bottom}`}
        role="presentation"
      >
        <Group left={MARGIN.left} top={MARGIN.top + up}>
          <text {...LABEL_TEXT} x={0} y={-up - 10}>
            {perStudent === 1 ? "students, each a dot" : `students, each dot up to ${perStudent}`}
          </text>
          <text {...AXIS_TEXT} x={WIDTH} y={-up - 10} textAnchor="end">
            finds more →
          </text>
          <Signs stacks={over} per={perStudent} isUp />
          <line x1={0} x2={WIDTH} stroke={STRONG_LINE} />
          <line x1={0} x2={WIDTH} y1={AXIS_ROOM} y2={AXIS_ROOM} stroke={STRONG_LINE} />
          {x.ticks(8).map((tick) => (
            <g key={tick} transform={`translate(${x(tick)} 0)`}>
              <line y1={0} y2={4} stroke={STRONG_LINE} />
              <line y1={AXIS_ROOM - 4} y2={AXIS_ROOM} stroke={LINE} />
              <text {...AXIS_TEXT} y={AXIS_ROOM / 2} dy="0.35em" textAnchor="middle">
                {toNumberWords(tick, 0)}
              </text>
            </g>
          ))}
          <Group top={AXIS_ROOM}>
            <Signs stacks={under} per={perMark} isUp={false} />
            <text {...LABEL_TEXT} x={0} y={down + 18}>
              {perMark === 1 ? "marks, each a diamond" : `marks, each diamond up to ${perMark}`}
            </text>
            <text {...AXIS_TEXT} x={WIDTH} y={down + 18} textAnchor="end">
              harder to find →
            </text>
          </Group>
        </Group>
      </svg>
    </ChartFrame>
  );
}
