/** A stray for the result and for the debrief: its cause in words, and what to draw for it. */
import { fromClockDeg, type Point } from "@/lib/gem/point";
import type { StrayDetail, StrayResult } from "@/lib/plot/score-result";
import type { Exhibit } from "@/lib/scoring/exhibit";
import { explainEvidence } from "@/lib/scoring/explain-evidence";
import type { Evidence, Stray } from "@/lib/scoring/find-causes";
import type { MarkGeometry } from "@/lib/scoring/mark-geometry";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";

function toCentre({ centreX, centreY }: MarkGeometry): Point {
  return [centreX, centreY];
}

/** What to draw beside the mark, in the frame of its view as laid on the reference, and whose it is. */
function listPoints(
  { laid }: Exhibit,
  evidence: Evidence,
  model: PlottedModel,
): { points: Point[]; of: string | null } {
  switch (evidence.kind) {
    case "decoy":
      return { points: [toCentre(evidence.geometry)], of: evidence.decoy.id };
    case "fragment":
      return { points: [toCentre(evidence.model.geometry)], of: evidence.model.mark.id };
    case "double":
      return { points: [toCentre(evidence.standIn.geometry)], of: evidence.model.mark.id };
    case "echo":
      return { points: [evidence.echo.at], of: evidence.model.mark.id };
    case "glint": {
      const other = evidence.glint.opposite === null ? undefined : laid[evidence.glint.opposite.plotted];
      if (other !== undefined) return { points: [toCentre(other.geometry)], of: other.mark.id };
      const { prong } = evidence.glint;
      const radius = Math.hypot(...toCentre(model.geometry));
      return {
        points: prong === null ? [] : [fromClockDeg(model.mark.view, prong.clockDeg, radius)],
        of: null,
      };
    }
    default:
      return { points: [], of: null };
  }
}

function nameRuling({ cause, ruled }: Stray): string[] {
  if (ruled === undefined) return [];
  if (!ruled.isHeld) return [`Overruled, not held against the plot: ${ruled.reason}`];
  return [
    `Overruled, put down to ${cause}: ${ruled.reason}`,
    ...(ruled.before === cause ? [] : [`Scored first as ${ruled.before}.`]),
  ];
}

/** A stray's result and what the debrief draws for it. */
export function explainStray(
  exhibit: Exhibit,
  stray: Stray,
): { result: StrayResult; detail: StrayDetail } | null {
  const model = exhibit.laid[stray.plotted];
  if (model === undefined) return null;
  const { evidence, cause, ruled } = stray;
  // Evidence for another cause than the one that was ruled is told in words, not drawn.
  const isDrawn = ruled === undefined || ruled.before === cause;
  const { points, of } = isDrawn ? listPoints(exhibit, evidence, model) : { points: [], of: null };
  return {
    result: {
      mark: model.mark.id,
      cause,
      because: [...nameRuling(stray), ...explainEvidence(exhibit, evidence, model)],
    },
    detail: {
      mark: model.mark.id,
      points: points.map(([x, y]): [number, number] => [x, y]),
      view: model.mark.view,
      of,
      facets: isDrawn && evidence.kind === "echo" ? [...evidence.echo.facets] : [],
    },
  };
}
