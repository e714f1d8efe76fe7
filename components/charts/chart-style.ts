/**
 * Sizes and paints that all charts share. Lengths are units of the drawing's own box, which is CHART_WIDTH wide whatever
 * its size on the screen. Paints are the theme's variables, so that both themes and print are served by one drawing;
 * what differs is told apart by shape, line and words first.
 */
export const CHART_WIDTH = 440;
export const TEXT_SIZE = 12.5;

export const INK = "var(--lw-ink)";
export const MUTED = "var(--lw-muted)";
export const LINE = "var(--lw-line)";
export const STRONG_LINE = "var(--lw-line-strong)";
export const ACCENT = "var(--lw-accent)";
export const BAND = "var(--lw-raised)";
export const SURFACE = "var(--lw-surface)";

export const AXIS_TEXT = { fontSize: TEXT_SIZE, fill: MUTED } as const;
export const LABEL_TEXT = { fontSize: TEXT_SIZE, fill: INK } as const;
