import { Group } from "@visx/group";
import { scaleLinear } from "@visx/scale";
import { LinePath } from "@visx/shape";
import { ChartAxes } from "@/components/charts/chart-axes";
import { ChartFrame, type ChartWords } from "@/components/charts/chart-frame";
import { ACCENT, CHART_WIDTH, INK, LABEL_TEXT, STRONG_LINE, SURFACE } from "@/components/charts/chart-style";
import { toPercent } from "@/components/charts/to-figure-words";
import { computeFunnelLimits, placeInFunnel } from "@/lib/agreement/funnel-limits";

export interface FunnelGroup {
  readonly key: string;
  readonly label: string;
  readonly hits: number;
  readonly trials: number;
}

export interface FunnelChartProps extends ChartWords {
  readonly groups: readonly FunnelGroup[];
  /** What a group is, for the head of the table: `Section`. */
  readonly groupLabel: string;
  /** What the limits allow for beyond independent trials (`computePooledDesignEffect`); 1 when left out. */
  readonly designEffect?: number;
  /** What a trial is, in the plural: `graded plots`. */
  readonly trialLabel: string;
  /** What a hit is: `exact grades`. */
  readonly hitLabel: string;
}

const MARGIN = { top: 30, right: 18, bottom: 46, left: 46 };
const HEIGHT = 260;
const WIDTH = CHART_WIDTH - MARGIN.left - MARGIN.right;
const INNER = HEIGHT - MARGIN.top - MARGIN.bottom;
const STEPS = 60;

const PLACE_WORDS = {
  below: "below what chance explains",
  within: "within",
  above: "above what chance explains",
};

/** From a tenth below the least to a tenth above the most of the groups and of the limits at their sizes. */
function findReach(groups: readonly FunnelGroup[], common: number, designEffect: number): [number, number] {
  const ends = groups.flatMap(({ hits, trials }) => {
    const { low, high } = computeFunnelLimits(common, trials, designEffect);
    return [hits / trials, low, high];
  });
  const least = Math.floor(Math.min(common, ...ends) * 10 - 0.2) / 10;
  const most = Math.ceil(Math.max(common, ...ends) * 10 + 0.2) / 10;
  return [Math.max(0, least), Math.min(1, most)];
}

/**
 * Shares of groups against their size, with the limits between which chance alone puts them (`computeFunnelLimits`):
 * groups inside are not to be ranked. Those outside are squares with their names. Groups without a trial are in the table.
 */
export function FunnelChart(props: FunnelChartProps) {
  const { groups, groupLabel, trialLabel, hitLabel, designEffect = 1, ...words } = props;
  const used = groups.filter(({ trials }) => trials > 0);
  const trials = used.reduce((sum, group) => sum + group.trials, 0);
  const common = trials === 0 ? 0 : used.reduce((sum, group) => sum + group.hits, 0) / trials;
  const most = Math.max(1, ...used.map((group) => group.trials)) * 1.05;
  const x = scaleLinear<number>({ domain: [0, most], range: [0, WIDTH] });
  const y = scaleLinear<number>({
    domain: findReach(used, common, designEffect),
    range: [INNER, 0],
    clamp: true,
  });
  const limits = Array.from({ length: STEPS }, (_, i) =>
    computeFunnelLimits(common, Math.max(1, (most * (i + 1)) / STEPS), designEffect),
  );
  return (
    <ChartFrame
      {...words}
      table={{
        header: [groupLabel, hitLabel, trialLabel, "Share", "Against chance"],
        rows: groups.map((group) => [
          group.label,
          group.hits,
          group.trials,
          group.trials === 0 ? null : Number((group.hits / group.trials).toFixed(4)),
          PLACE_WORDS[placeInFunnel(group.hits, group.trials, common, designEffect)],
        ]),
      }}
      empty={used.length === 0 ? "nothing was handed in yet" : undefined}
    >
      <svg viewBox={`0 0 ${CHART_WIDTH} ${HEIGHT}`} role="presentation">
        <Group left={MARGIN.left} top={MARGIN.top}>
          <ChartAxes
            x={x}
            y={y}
            width={WIDTH}
            height={INNER}
            xTicks={x.ticks(5)}
            yTicks={y.ticks(5)}
            formatX={String}
            formatY={toPercent}
            xLabel={trialLabel}
            yLabel={hitLabel}
          />
          <line x1={0} x2={WIDTH} y1={y(common)} y2={y(common)} stroke={STRONG_LINE} strokeDasharray="6 4" />
          {(["low", "high"] as const).map((side) => (
            <LinePath
              key={side}
              data={limits}
              x={(limit) => x(limit.trials)}
              y={(limit) => y(limit[side])}
              stroke={STRONG_LINE}
              strokeWidth={1.5}
            />
          ))}
          {used.map((group) => {
            const place = placeInFunnel(group.hits, group.trials, common, designEffect);
            const [cx, cy] = [x(group.trials), y(group.hits / group.trials)];
            if (place === "within") {
              return (
                <circle key={group.key} cx={cx} cy={cy} r={4} fill={SURFACE} stroke={INK} strokeWidth={1.75}>
                  <title>{group.label}</title>
                </circle>
              );
            }
            const isRight = cx > WIDTH * 0.6;
            return (
              <g key={group.key}>
                <rect x={cx - 4.5} y={cy - 4.5} width={9} height={9} fill={ACCENT} />
                <text
                  {...LABEL_TEXT}
                  x={cx + (isRight ? -9 : 9)}
                  y={cy + (place === "below" ? 14 : -8)}
                  textAnchor={isRight ? "end" : "start"}
                >
                  {group.label}
                </text>
              </g>
            );
          })}
        </Group>
      </svg>
    </ChartFrame>
  );
}
