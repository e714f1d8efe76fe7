import { useRef } from "react";

/** The list given before, when the new one holds the same things in the same order: what follows from it then stays. */
export function useStableList<T>(list: readonly T[]): readonly T[] {
  const kept = useRef(list);
  const before = kept.current;
  if (before.length !== list.length || list.some((one, i) => one !== before[i])) kept.current = list;
  return kept.current;
}
