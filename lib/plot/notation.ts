/**
 * Notation: how a program draws. Inside and surface marks, and the outcomes of a debrief, each have a colour for
 * either theme, a line style and a dot of their own, so that a plot reads without colour.
 *
 * The default palette is blue, ochre and plum: it keeps apart for the common colour-vision deficiencies, and every
 * ink has a contrast of at least 3:1 on the diagram's paper (WCAG 2.2, 1.4.11). Both are tested.
 */
import { z } from "zod";

const InkSchema = z.string().regex(/^#[0-9a-fA-F]{6}$/, "must be a colour such as #1a66bd");

/** A colour for the light theme and one for the dark. */
export const InksSchema = z.strictObject({ light: InkSchema, dark: InkSchema });
export type Inks = z.infer<typeof InksSchema>;

/** How a dot is drawn. */
export const DOT_SIGNS = ["filled", "hollow", "square", "cross"] as const;
/** The form of the callout that bears the number. */
export const CALLOUT_FORMS = ["round", "square", "diamond", "triangle"] as const;

export const MarkStyleSchema = z.strictObject({
  inks: InksSchema,
  /** Dashes and gaps in turn, px at zoom 1; empty for an unbroken line. */
  dashPx: z.array(z.number().gt(0).max(40)).max(8),
  widthPx: z.number().min(1).max(6),
  dot: z.enum(DOT_SIGNS),
  callout: z.enum(CALLOUT_FORMS),
});
export type MarkStyle = z.infer<typeof MarkStyleSchema>;

export const MARK_STYLES = [
  "inside",
  "surface",
  "decoy",
  "found",
  "overlooked",
  "stray",
  "set-aside",
] as const;
export type MarkStyleName = (typeof MARK_STYLES)[number];

export const NotationSchema = z.strictObject({
  inside: MarkStyleSchema,
  surface: MarkStyleSchema,
  decoy: MarkStyleSchema,
  found: MarkStyleSchema,
  overlooked: MarkStyleSchema,
  stray: MarkStyleSchema,
  "set-aside": MarkStyleSchema,
});
export type Notation = z.infer<typeof NotationSchema>;

/** What the diagram is drawn on, and the lines of the stone itself. Contrast of marks is measured against `paper`. */
export const DIAGRAM_INKS = {
  paper: { light: "#ffffff", dark: "#101417" },
  /** The stone's face within the girdle, a shade off the paper. */
  stone: { light: "#f6f8f9", dark: "#151a1e" },
  facet: { light: "#a9b3b9", dark: "#46525a" },
  girdle: { light: "#5d6a72", dark: "#8b989f" },
  clock: { light: "#5d6a72", dark: "#98a5ac" },
  ink: { light: "#171c20", dark: "#dde3e6" },
} as const satisfies Record<string, Inks>;

const BLUE = { light: "#1a66bd", dark: "#7cb3ff" };
const OCHRE = { light: "#9a5b00", dark: "#f0b35a" };
const PLUM = { light: "#5c1350", dark: "#d8609c" };
const GREY = { light: "#5d6a72", dark: "#98a5ac" };

export const DEFAULT_NOTATION: Notation = {
  inside: { inks: BLUE, dashPx: [], widthPx: 2, dot: "filled", callout: "round" },
  surface: { inks: OCHRE, dashPx: [5, 3], widthPx: 2, dot: "hollow", callout: "square" },
  decoy: { inks: PLUM, dashPx: [1.5, 3], widthPx: 2, dot: "cross", callout: "diamond" },
  found: { inks: BLUE, dashPx: [], widthPx: 2.25, dot: "filled", callout: "round" },
  overlooked: { inks: PLUM, dashPx: [8, 4], widthPx: 2.5, dot: "square", callout: "diamond" },
  stray: { inks: OCHRE, dashPx: [1.5, 3], widthPx: 2.25, dot: "cross", callout: "triangle" },
  "set-aside": { inks: GREY, dashPx: [5, 3], widthPx: 1.5, dot: "hollow", callout: "square" },
};
