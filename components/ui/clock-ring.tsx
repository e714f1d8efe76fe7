import { getSolid } from "@/lib/gem/build-solid";
import { drawView } from "@/lib/gem/draw-view";
import { toSvgPath } from "@/lib/gem/to-svg";

const TICKS = Array.from({ length: 60 }, (_, index) => index);
/** The stone's girdle width in the units of the picture. */
const GIRDLE = 172;

/** A round brilliant under a clock's graduation, with one numbered mark: the quiet picture of what is done here. */
export function ClockRing({ label, className }: { label: string; className?: string | undefined }) {
  const { edges, outline } = drawView(getSolid("round-brilliant"), "crown");
  return (
    <svg viewBox="-112 -112 224 224" fill="none" aria-hidden="true" focusable="false" className={className}>
      <g transform={`scale(${GIRDLE})`} stroke="var(--lw-line-strong)" strokeLinejoin="round">
        <path
          d={edges.map((edge) => toSvgPath(edge, false)).join("")}
          strokeOpacity="0.4"
          strokeWidth="1"
          vectorEffect="non-scaling-stroke"
        />
        <path d={toSvgPath(outline, true)} strokeWidth="1.5" vectorEffect="non-scaling-stroke" />
      </g>
      {TICKS.map((tick) => (
        <line
          key={tick}
          y1={tick % 5 === 0 ? -104 : -100}
          y2={-95}
          stroke="var(--lw-line-strong)"
          strokeWidth={tick % 15 === 0 ? 2 : 1}
          vectorEffect="non-scaling-stroke"
          transform={`rotate(${tick * 6})`}
        />
      ))}
      <g stroke="var(--lw-accent)" strokeWidth="1.75">
        <path d="M32 -26 L88 -82 H108" vectorEffect="non-scaling-stroke" />
        <circle cx="29" cy="-23" r="4" fill="var(--lw-ground)" vectorEffect="non-scaling-stroke" />
      </g>
      <text x="98" y="-87" textAnchor="middle" fontSize="13" fontWeight="600" fill="var(--lw-ink)">
        {label}
      </text>
    </svg>
  );
}
