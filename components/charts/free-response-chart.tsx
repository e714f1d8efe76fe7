import { Group } from "@visx/group";
import { scaleLinear } from "@visx/scale";
import { LinePath } from "@visx/shape";
import { ChartAxes } from "@/components/charts/chart-axes";
import { ChartFrame, type ChartWords } from "@/components/charts/chart-frame";
import { CHART_WIDTH, INK, LABEL_TEXT, SURFACE } from "@/components/charts/chart-style";
import { toNumberWords, toPercent } from "@/components/charts/to-figure-words";
import type { ConfidencePoint } from "@/lib/agreement/derive-rates";

export interface FreeResponseChartProps extends ChartWords {
  /** As `deriveRates` gives them, confidence 5 first. */
  readonly points: readonly ConfidencePoint[];
}

const MARGIN = { top: 30, right: 20, bottom: 46, left: 46 };
const HEIGHT = 250;
const WIDTH = CHART_WIDTH - MARGIN.left - MARGIN.right;
const INNER = HEIGHT - MARGIN.top - MARGIN.bottom;

interface Place {
  readonly confidence: number;
  readonly found: number;
  readonly strays: number;
}

/** The points that have both figures, surest first. */
function listPlaces(points: readonly ConfidencePoint[]): Place[] {
  return points.flatMap(({ confidence, foundShare, straysPerPlot }) =>
    foundShare === null || straysPerPlot === null
      ? []
      : [{ confidence, found: foundShare, strays: straysPerPlot }],
  );
}

/** Found marks against strays as the bar of confidence is lowered from 5 to 1: up is good, right is not. */
export function FreeResponseChart({ points, ...words }: FreeResponseChartProps) {
  const places = listPlaces(points);
  const most = Math.max(0.5, ...places.map(({ strays }) => strays)) * 1.08;
  const x = scaleLinear<number>({ domain: [0, most], range: [0, WIDTH], nice: true });
  const y = scaleLinear<number>({ domain: [0, 1], range: [INNER, 0] });
  // Of points that lie on one another the last is named, so that no name covers another.
  const named = places.filter((place, i) => {
    const next = places[i + 1];
    return (
      next === undefined || Math.hypot(x(next.strays) - x(place.strays), y(next.found) - y(place.found)) > 15
    );
  });
  return (
    <ChartFrame
      {...words}
      table={{
        header: ["Confidence at least", "Share of reference marks found", "Strays on a stone"],
        rows: places.map(({ confidence, found, strays }) => [
          confidence,
          Number(found.toFixed(4)),
          Number(strays.toFixed(4)),
        ]),
      }}
      empty={places.length === 0 ? "no reference mark was there to be found" : undefined}
    >
      <svg viewBox={`0 0 ${CHART_WIDTH} ${HEIGHT}`} role="presentation">
        <Group left={MARGIN.left} top={MARGIN.top}>
          <ChartAxes
            x={x}
            y={y}
            width={WIDTH}
            height={INNER}
            xTicks={x.ticks(5)}
            yTicks={[0, 0.25, 0.5, 0.75, 1]}
            formatX={(value) => toNumberWords(value, most < 2 ? 1 : 0)}
            formatY={toPercent}
            xLabel="strays on a stone"
            yLabel="reference marks found"
          />
          <LinePath
            data={[{ confidence: 6, found: 0, strays: 0 }, ...places]}
            x={({ strays }) => x(strays)}
            y={({ found }) => y(found)}
            stroke={INK}
            strokeWidth={2}
          />
          {named.map(({ confidence, found, strays }) => (
            <g key={confidence} transform={`translate(${x(strays)} ${y(found)})`}>
              <circle r={4} fill={SURFACE} stroke={INK} strokeWidth={2} />
              <text
                {...LABEL_TEXT}
                x={x(strays) > WIDTH - 60 ? 0 : 8}
                y={16}
                textAnchor={x(strays) > WIDTH - 60 ? "end" : "start"}
              >
                {confidence === 5 ? "sure: 5" : confidence === 1 ? "all: 1" : confidence}
              </text>
            </g>
          ))}
        </Group>
      </svg>
    </ChartFrame>
  );
}
