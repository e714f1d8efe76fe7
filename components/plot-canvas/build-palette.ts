import type { Palette, Pen } from "@/components/plot-canvas/drawn-item";
import { DIAGRAM_INKS, MARK_STYLES, type MarkStyleName, type Notation } from "@/lib/plot/notation";

/** The colours of a notation in one theme. */
export function buildPalette(notation: Notation, scheme: "light" | "dark"): Palette {
  const pens = Object.fromEntries(
    MARK_STYLES.map((name): [MarkStyleName, Pen] => {
      const { inks, ...style } = notation[name];
      return [name, { ...style, ink: inks[scheme] }];
    }),
  ) as Record<MarkStyleName, Pen>;
  return {
    paper: DIAGRAM_INKS.paper[scheme],
    stone: DIAGRAM_INKS.stone[scheme],
    facet: DIAGRAM_INKS.facet[scheme],
    girdle: DIAGRAM_INKS.girdle[scheme],
    clock: DIAGRAM_INKS.clock[scheme],
    ink: DIAGRAM_INKS.ink[scheme],
    pens,
  };
}
