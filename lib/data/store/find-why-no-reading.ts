import type { Viewer } from "@/lib/access/viewer";
import type { StoneWithParts } from "@/lib/data/store/find-stone";

/** Why somebody cannot be a stone's second reader, as a sentence; null where they can. `hasRead`: a reading of theirs has ended. */
export function findWhyNoReading(
  viewer: Viewer,
  { references }: Pick<StoneWithParts, "references">,
  hasRead: boolean,
): string | null {
  if (references.length === 0)
    return "This stone has no reference yet, so there is nothing to read a second time.";
  if (references.some(({ authorId }) => authorId === viewer.userId)) {
    return "You wrote a version of this reference: a second reader must be somebody else.";
  }
  if (hasRead) return "You have read this stone before, and may have seen its reference since.";
  return null;
}
