import { AxisBottom, AxisLeft, type TickRendererProps } from "@visx/axis";
import { GridRows } from "@visx/grid";
import type { scaleLinear } from "@visx/scale";
import { AXIS_TEXT, LINE, STRONG_LINE } from "@/components/charts/chart-style";

type LinearScale = ReturnType<typeof scaleLinear<number>>;

export interface ChartAxesProps {
  readonly x: LinearScale;
  readonly y: LinearScale;
  /** Of the inner box, units. */
  readonly width: number;
  readonly height: number;
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  readonly formatX: (value: number) => string;
  readonly formatY: (value: number) => string;
  /** Stands under the ticks. */
  readonly xLabel?: string;
  /** Stands over the axis. */
  readonly yLabel?: string;
}

/** Without it the library measures the text in a browser, and these axes are drawn on the server. */
const drawTick =
  (textAnchor: "middle" | "end") =>
  ({ x, y, formattedValue }: TickRendererProps) => (
    <text {...AXIS_TEXT} x={x} y={y} dy="0.35em" textAnchor={textAnchor}>
      {formattedValue}
    </text>
  );

/** Axes of a drawing with quiet lines across. Drawn inside the inner box's group. */
export function ChartAxes(props: ChartAxesProps) {
  const { x, y, width, height, xTicks, yTicks, formatX, formatY, xLabel, yLabel } = props;
  return (
    <>
      <GridRows scale={y} width={width} tickValues={[...yTicks]} stroke={LINE} />
      <AxisBottom
        scale={x}
        top={height}
        tickValues={[...xTicks]}
        tickFormat={(value) => formatX(Number(value))}
        stroke={STRONG_LINE}
        tickStroke={STRONG_LINE}
        tickLength={5}
        tickComponent={drawTick("middle")}
        tickLabelProps={{ dy: "0.5em" }}
      />
      <AxisLeft
        scale={y}
        tickValues={[...yTicks]}
        tickFormat={(value) => formatY(Number(value))}
        hideAxisLine
        hideTicks
        tickLength={2}
        tickComponent={drawTick("end")}
      />
      {xLabel !== undefined && (
        <text {...AXIS_TEXT} x={width} y={height + 36} textAnchor="end">
          {xLabel}
        </text>
      )}
      {yLabel !== undefined && (
        <text {...AXIS_TEXT} x={-36} y={-16}>
          {yLabel}
        </text>
      )}
    </>
  );
}
