import type { Point } from "@/lib/gem/point";
import type { MarkStyle, MarkStyleName } from "@/lib/plot/notation";
import type { Shape } from "@/lib/plot/shape";

/** Something to draw on a view, whatever it stands for. */
export interface DrawnItem {
  readonly key: string;
  readonly shape: Shape;
  readonly style: MarkStyleName;
  /** The number or sign of its callout, or null for none. */
  readonly callout: string | null;
  /** Laid out over the other of a pair: a reference mark is drawn wider and washed in, a plotted one finer. */
  readonly side?: "reference" | "plotted";
  /** 0 to 1: a dot that is no mark but a prediction, drawn as a faint ring, larger and darker the stronger it is. */
  readonly strength?: number;
  /** Girdle widths: a dot that stands for how many marks lie there, drawn as a disc of this radius. */
  readonly discRadius?: number;
}

/** A line between two places of a view, such as from a reference mark to the mark that found it. */
export interface DrawnLink {
  readonly key: string;
  readonly from: Point;
  readonly to: Point;
  readonly style: MarkStyleName;
}

/** A style with its colour for the theme that is on. */
export interface Pen extends Omit<MarkStyle, "inks"> {
  readonly ink: string;
}

/** The colours that a diagram is drawn with in one theme. */
export interface Palette {
  readonly paper: string;
  readonly stone: string;
  readonly facet: string;
  readonly girdle: string;
  readonly clock: string;
  readonly ink: string;
  readonly pens: Readonly<Record<MarkStyleName, Pen>>;
}
