/** The overlays of a stone's evidence: density, single marks, the reference, and the places to look at. Pure. */
import type { LayerItem, OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { CELL_WIDTH } from "@/lib/agreement/build-stone-evidence";
import type { StoneEvidence } from "@/lib/agreement/stone-evidence";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Reference } from "@/lib/plot/stone";

export const toReferenceKey = (id: string) => `reference:${id}`;

/** The number of a reference mark on the diagram and in the table beside it: its place in the reference. */
export function toReferenceNumber(reference: Reference, id: string): string {
  return String(reference.marks.findIndex((mark) => mark.id === id) + 1);
}

/** The sign of a place to look at: apart from the numbers of the reference. */
export const toSuggestionSign = (index: number) => `?${index + 1}`;

function drawCells({ cells, students }: StoneEvidence): LayerItem[] {
  const most = Math.max(1, ...cells.map((cell) => cell.students));
  return cells.map(({ view, at, students: own }, index) => ({
    key: `cell:${index}`,
    view,
    shape: { kind: "dot", at: [at[0], at[1]] },
    style: "set-aside",
    callout: null,
    // The disc's area says how many; the fullest fills its cell.
    discRadius: (CELL_WIDTH / 2) * Math.sqrt(own / most),
    words: `${own} of ${students} students`,
  }));
}

function drawSingles({ singles }: StoneEvidence): LayerItem[] {
  return singles.map(({ view, shape, characteristic, cause }, index) => ({
    key: `single:${index}`,
    view,
    shape,
    style: cause === null ? "found" : "stray",
    callout: null,
    side: "plotted",
    words: `${toCharacteristicLabel(characteristic)}, ${cause === null ? "found" : "stray"}`,
  }));
}

function drawReference(reference: Reference): LayerItem[] {
  return reference.marks.map(({ id, view, shape, characteristic, optional }) => ({
    key: toReferenceKey(id),
    view,
    shape,
    style: optional === true ? "set-aside" : "inside",
    callout: toReferenceNumber(reference, id),
    side: "reference",
    words: `reference: ${toCharacteristicLabel(characteristic)}`,
  }));
}

function drawDecoys(reference: Reference): LayerItem[] {
  return reference.decoys.map(({ id, view, shape, cause }) => ({
    key: `decoy:${id}`,
    view,
    shape,
    style: "decoy",
    callout: null,
    side: "reference",
    words: `a place that misleads: ${cause}`,
  }));
}

function drawSuggestions({ suggestions }: StoneEvidence): LayerItem[] {
  return suggestions.map(({ key, view, at, students, of }, index) => ({
    key,
    view,
    shape: { kind: "dot", at: [at[0], at[1]] },
    style: "overlooked",
    callout: toSuggestionSign(index),
    words: `${students} of ${of} students mark this place and the reference does not`,
  }));
}

/** From the bottom up; single marks can be shown in place of the density. */
export function buildEvidenceLayers(evidence: StoneEvidence, reference: Reference | null): OverlayLayer[] {
  const layers: OverlayLayer[] = [
    { id: "density", label: "Where students mark", items: drawCells(evidence) },
    { id: "singles", label: "Single marks", items: drawSingles(evidence), isShown: false },
  ];
  if (reference !== null) {
    layers.push({ id: "reference", label: "Reference", items: drawReference(reference) });
    if (reference.decoys.length > 0) {
      layers.push({
        id: "decoys",
        label: "Places that mislead",
        items: drawDecoys(reference),
        isShown: false,
      });
    }
  }
  if (evidence.suggestions.length > 0) {
    layers.push({ id: "suggestions", label: "Places to look at", items: drawSuggestions(evidence) });
  }
  return layers;
}
