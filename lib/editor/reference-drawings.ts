/** A reference's marks and decoys as one list to draw, and back. */
import { isDecoy, type ReferenceDrawing } from "@/lib/editor/drawn-mark";
import type { Decoy, ReferenceMark } from "@/lib/plot/mark";

/**
 * Marks first, then decoys. A file may give a mark and a decoy the same id; the decoy then gets a new one, since
 * the editor holds both in one list. Empty input gives an empty list.
 */
export function joinReferenceDrawings(
  marks: readonly ReferenceMark[],
  decoys: readonly Decoy[],
): ReferenceDrawing[] {
  const taken = new Set([...marks, ...decoys].map(({ id }) => id));
  const used = new Set(marks.map(({ id }) => id));
  const renamed = decoys.map((decoy) => {
    let id = decoy.id;
    for (let n = 2; used.has(id); n += 1) {
      const candidate = `${decoy.id.slice(0, 56)}-${n}`;
      if (!taken.has(candidate)) id = candidate;
    }
    used.add(id);
    taken.add(id);
    return id === decoy.id ? decoy : { ...decoy, id };
  });
  return [...marks, ...renamed];
}

/** The two lists of a reference, each in the order in which it was drawn. */
export function splitReferenceDrawings(drawings: readonly ReferenceDrawing[]): {
  marks: ReferenceMark[];
  decoys: Decoy[];
} {
  const marks: ReferenceMark[] = [];
  const decoys: Decoy[] = [];
  for (const drawing of drawings) {
    if (isDecoy(drawing)) decoys.push(drawing);
    else marks.push(drawing);
  }
  return { marks, decoys };
}
