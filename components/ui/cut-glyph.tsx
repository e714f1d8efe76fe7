import { isAppError } from "@/lib/base/app-error";
import { getSolid, type Solid } from "@/lib/gem/build-solid";
import type { CutName } from "@/lib/gem/cut-name";
import { drawView } from "@/lib/gem/draw-view";
import type { Proportions } from "@/lib/gem/proportions";
import { toSvgPath } from "@/lib/gem/to-svg";

export interface CutGlyphProps {
  cut: CutName;
  /** The cut's usual ones when left out. */
  proportions?: Proportions;
  /** Pixels. */
  size?: number;
}

/** A cut that cannot be built from these numbers has no picture; its page says why. */
function findGlyphSolid(cut: CutName, proportions: Proportions): Solid | null {
  try {
    return getSolid(cut, proportions);
  } catch (thrown) {
    if (isAppError(thrown, "bad-input")) return null;
    throw thrown;
  }
}

/** The crown of a cut as a small drawing beside its name. */
export function CutGlyph({ cut, proportions = {}, size = 56 }: CutGlyphProps) {
  const solid = findGlyphSolid(cut, proportions);
  if (solid === null) return null;
  const drawing = drawView(solid, "crown");
  const reach = Math.max(...drawing.outline.map(([x, y]) => Math.max(Math.abs(x), Math.abs(y)))) * 1.06;
  return (
    <svg
      width={size}
      height={size}
      viewBox={`${-reach} ${-reach} ${2 * reach} ${2 * reach}`}
      fill="none"
      stroke="currentColor"
      strokeLinejoin="round"
      aria-hidden="true"
      focusable="false"
    >
      <path
        d={drawing.edges.map((edge) => toSvgPath(edge, false)).join("")}
        strokeWidth="1"
        strokeOpacity="0.55"
        vectorEffect="non-scaling-stroke"
      />
      <path d={toSvgPath(drawing.outline, true)} strokeWidth="1.5" vectorEffect="non-scaling-stroke" />
    </svg>
  );
}
