/** A way of laying the plot, or one view of it, that would fit better than the one that counts. It earns nothing. */
import { type Laying, layAlike, type ViewLayings } from "@/components/debrief/lay-mark";
import type { View } from "@/lib/gem/point";
import type { DebriefView } from "@/lib/plot/student-view";

export interface OtherFit extends Laying {
  /** The one view that would; null for the plot as a whole. */
  readonly view: View | null;
  /** Points more. */
  readonly gain: number;
}

/** What the engine found, of the whole plot or of one view; null where nothing is worth telling. */
export function findOtherFit({ result, detail }: DebriefView): OtherFit | null {
  const { wouldFit } = result.alignment;
  return wouldFit === null ? detail.viewFit : { ...wouldFit, view: null };
}

/** The plot laid so; as it counts where there is no other way. */
export function layOtherwise(view: DebriefView): ViewLayings {
  const counted = layAlike({ turnDeg: view.result.alignment.turnDeg, mirrored: false });
  const fit = findOtherFit(view);
  if (fit === null) return counted;
  const laying = { turnDeg: fit.turnDeg, mirrored: fit.mirrored };
  return fit.view === null ? layAlike(laying) : { ...counted, [fit.view]: laying };
}

/** How it would be laid. Where the whole plot is turned as that view would be, the view is mirrored and no more. */
export function toFitWords(fit: OtherFit, { result }: DebriefView): string {
  const isMirrorOnly = fit.view !== null && fit.mirrored && fit.turnDeg === result.alignment.turnDeg;
  return isMirrorOnly ? "mirrored" : toLayingWords(fit, fit.view);
}

/**
 * "mirrored and turned by 45° clockwise"; "left as it was drawn" where neither. A turn is clockwise as the crown is seen; seen
 * in the pavilion view it goes the other way round.
 */
export function toLayingWords({ turnDeg, mirrored }: Laying, view: View | null = null): string {
  if (turnDeg === 0) return mirrored ? "mirrored" : "left as it was drawn";
  const side = turnDeg > 0 === (view !== "pavilion") ? "clockwise" : "counter-clockwise";
  return `${mirrored ? "mirrored and " : ""}turned by ${Math.abs(turnDeg)}° ${side}`;
}
