import { parseColumn } from "@/lib/data/store/parse-column";
import { StoneBodySchema } from "@/lib/plot/stone";
import type { StoneCard } from "@/lib/plot/student-view";

/** A stone as whoever holds it may know it: label and body, nothing of its clarity. */
export function toStoneCard(stone: { readonly label: string; readonly body: unknown }): StoneCard {
  return { label: stone.label, ...parseColumn(StoneBodySchema, stone.body, "Stone.body") };
}
