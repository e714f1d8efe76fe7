import type { CSSProperties } from "react";
import classes from "@/components/plot-editor/mark-sign.module.css";
import type { MarkStyle } from "@/lib/plot/notation";

interface MarkSignProps {
  readonly style: MarkStyle;
  /** The number within, or none: then a piece of the line with its dot is shown. */
  readonly text?: string;
}

const CALLOUT_PATHS: Readonly<Record<MarkStyle["callout"], string>> = {
  round: "M12 2a10 10 0 1 0 0.01 0Z",
  square: "M3 3H21V21H3Z",
  diamond: "M12 0.5L23.5 12L12 23.5L0.5 12Z",
  triangle: "M12 1L23.5 21.5H0.5Z",
};

function LineSign({ style }: { readonly style: MarkStyle }) {
  const dash = style.dashPx.length === 0 ? undefined : style.dashPx.join(" ");
  return (
    <>
      <path
        d="M1 17C7 8 14 22 27 9"
        fill="none"
        stroke="currentColor"
        strokeWidth={style.widthPx}
        strokeDasharray={dash}
      />
      {style.dot === "cross" ? (
        <path d="M30 8l7 7m0-7l-7 7" stroke="currentColor" strokeWidth="2" />
      ) : style.dot === "square" ? (
        <rect x="30" y="8" width="7" height="7" fill="none" stroke="currentColor" strokeWidth="2" />
      ) : (
        <circle
          cx="33.5"
          cy="12"
          r={style.dot === "filled" ? 3.5 : 3.25}
          fill={style.dot === "filled" ? "currentColor" : "none"}
          stroke="currentColor"
          strokeWidth={style.dot === "filled" ? 0 : 2}
        />
      )}
    </>
  );
}

/** The sign of a style, as on the diagram: its callout with a number, or a piece of its line and its dot. */
export function MarkSign({ style, text }: MarkSignProps) {
  const inks = { "--ink-light": style.inks.light, "--ink-dark": style.inks.dark } as CSSProperties;
  return text === undefined ? (
    <svg className={classes.sign} style={inks} viewBox="0 0 40 24" width="40" height="24" aria-hidden="true">
      <LineSign style={style} />
    </svg>
  ) : (
    <svg
      className={classes.sign}
      style={inks}
      viewBox="-1 -1 26 26"
      width="26"
      height="26"
      aria-hidden="true"
    >
      <path className={classes.form} d={CALLOUT_PATHS[style.callout]} />
      <text
        className={classes.number}
        x="12"
        y={style.callout === "triangle" ? 15 : 12.5}
        fontSize={text.length > 2 ? 9 : 12}
      >
        {text}
      </text>
    </svg>
  );
}
