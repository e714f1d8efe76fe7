import type { GradedProperty } from "@/lib/plot/grades";

/** The graded properties as they are read. */
export const PROPERTY_LABELS: Readonly<Record<GradedProperty, string>> = {
  clarity: "Clarity",
  colour: "Colour",
  polish: "Polish",
  symmetry: "Symmetry",
  fluorescence: "Fluorescence",
};
