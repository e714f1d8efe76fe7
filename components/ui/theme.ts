/** The look of Loupework as a Mantine theme: graphite for everything, one lamp-coloured accent, square and quiet. */
import {
  Button,
  type CSSVariablesResolver,
  createTheme,
  defaultVariantColorsResolver,
  Input,
  type MantineColorsTuple,
  Modal,
  Tooltip,
  type VariantColorsResolver,
} from "@mantine/core";

const GRAPHITE: MantineColorsTuple = [
  "#f3f5f6",
  "#e9edef",
  "#d5dbdf",
  "#b3bdc3",
  "#98a5ac",
  "#7f8b93",
  "#525e66",
  "#3a454c",
  "#242c31",
  "#171c20",
];

/** Mantine's own dark tuple: 0 is text, 6 is a surface, 7 is the ground. */
const DARK: MantineColorsTuple = [
  "#dde3e6",
  "#c3ccd1",
  "#98a5ac",
  "#68757d",
  "#2b3338",
  "#1d2327",
  "#14181b",
  "#0d1012",
  "#090b0d",
  "#050607",
];

const EMBER: MantineColorsTuple = [
  "#fbe7e6",
  "#f6cfcd",
  "#ffb9b2",
  "#ff9b92",
  "#e8736b",
  "#c9474a",
  "#b8343a",
  "#a3272b",
  "#8a1d22",
  "#331817",
];

const LINE = "1px solid";

/** Buttons and icons by variant: graphite unless red is asked for, each from the palette of the scheme. */
const resolveVariantColors: VariantColorsResolver = (input) => {
  const red = input.color === "red";
  if (!red && input.color !== undefined && input.color !== "graphite")
    return defaultVariantColorsResolver(input);
  const ink = red ? "var(--lw-bad)" : "var(--lw-ink)";
  switch (input.variant) {
    case "filled":
      return {
        background: ink,
        hover: red ? "var(--lw-bad)" : "var(--lw-ink-hover)",
        color: "var(--lw-ground)",
        border: `${LINE} transparent`,
      };
    case "light":
      return {
        background: red ? "var(--lw-bad-soft)" : "var(--lw-raised)",
        hover: red ? "var(--lw-bad-soft)" : "var(--lw-line)",
        color: ink,
        border: `${LINE} transparent`,
      };
    case "outline":
      return {
        background: "transparent",
        hover: "var(--lw-raised)",
        color: ink,
        border: `${LINE} ${red ? "var(--lw-bad)" : "var(--lw-line-strong)"}`,
      };
    case "subtle":
      return {
        background: "transparent",
        hover: "var(--lw-raised)",
        color: ink,
        border: `${LINE} transparent`,
      };
    default:
      return defaultVariantColorsResolver(input);
  }
};

export const theme = createTheme({
  fontFamily: "'Atkinson Hyperlegible Next Variable', 'typeface Fallback', system-ui, sans-serif",
  fontFamilyMonospace: "ui-monospace, 'Cascadia Mono', 'DejaVu Sans Mono', monospace",
  white: "#ffffff",
  black: "#171c20",
  colors: { graphite: GRAPHITE, gray: GRAPHITE, dark: DARK, red: EMBER },
  primaryColor: "graphite",
  primaryShade: { light: 8, dark: 1 },
  autoContrast: true,
  variantColorResolver: resolveVariantColors,
  fontSizes: { xs: "0.8125rem", sm: "0.9375rem", md: "1rem", lg: "1.125rem", xl: "1.25rem" },
  focusRing: "auto",
  defaultRadius: "sm",
  radius: { xs: "2px", sm: "3px", md: "4px", lg: "6px", xl: "8px" },
  cursorType: "pointer",
  respectReducedMotion: true,
  shadows: {
    xs: "none",
    sm: "none",
    md: "0 6px 20px rgb(0 0 0 / 0.16)",
    lg: "0 10px 32px rgb(0 0 0 / 0.22)",
    xl: "0 14px 44px rgb(0 0 0 / 0.28)",
  },
  headings: {
    fontWeight: "640",
    textWrap: "balance",
    sizes: {
      h1: { fontSize: "1.75rem", lineHeight: "1.15" },
      h2: { fontSize: "1.25rem", lineHeight: "1.25" },
      h3: { fontSize: "1.0625rem", lineHeight: "1.35" },
      h4: { fontSize: "1rem", lineHeight: "1.4" },
    },
  },
  components: {
    Button: Button.extend({ styles: { label: { fontWeight: 600 } } }),
    InputWrapper: Input.Wrapper.extend({ styles: { label: { fontWeight: 600, marginBottom: 4 } } }),
    Modal: Modal.extend({
      defaultProps: {
        centered: true,
        overlayProps: { backgroundOpacity: 0.5 },
        // The dialog's header is no banner of the page.
        attributes: { header: { role: "presentation" } },
      },
      styles: {
        title: { fontWeight: 640, fontSize: "1.125rem" },
        header: { background: "var(--lw-surface)" },
        content: { background: "var(--lw-surface)", border: "1px solid var(--lw-line-strong)" },
      },
    }),
    Tooltip: Tooltip.extend({ defaultProps: { openDelay: 350, withArrow: false } }),
  },
});

/** The palette that our own style sheets use. Contrast is checked against WCAG 2.2 by the palette test. */
export const LIGHT_PALETTE = {
  "--lw-ground": "#f3f5f6",
  "--lw-surface": "#ffffff",
  "--lw-raised": "#e9edef",
  "--lw-ink": "#171c20",
  "--lw-ink-hover": "#3a454c",
  "--lw-muted": "#525e66",
  "--lw-line": "#d5dbdf",
  "--lw-line-strong": "#7f8b93",
  "--lw-accent": "#855600",
  "--lw-accent-soft": "#fbf0d9",
  "--lw-good": "#0a6a4e",
  "--lw-good-soft": "#e0f2eb",
  "--lw-bad": "#a3272b",
  "--lw-bad-soft": "#fbe7e6",
} as const;

export const DARK_PALETTE: Record<keyof typeof LIGHT_PALETTE, string> = {
  "--lw-ground": "#0d1012",
  "--lw-surface": "#14181b",
  "--lw-raised": "#1d2327",
  "--lw-ink": "#dde3e6",
  "--lw-ink-hover": "#c3ccd1",
  "--lw-muted": "#98a5ac",
  "--lw-line": "#2b3338",
  "--lw-line-strong": "#68757d",
  "--lw-accent": "#e6b450",
  "--lw-accent-soft": "#2a2212",
  "--lw-good": "#5fcaa3",
  "--lw-good-soft": "#10271f",
  "--lw-bad": "#ff9b92",
  "--lw-bad-soft": "#331817",
};

const MANTINE_FROM_PALETTE = {
  "--mantine-color-body": "var(--lw-ground)",
  "--mantine-color-text": "var(--lw-ink)",
  "--mantine-color-dimmed": "var(--lw-muted)",
  "--mantine-color-placeholder": "var(--lw-muted)",
  "--mantine-color-anchor": "var(--lw-ink)",
  "--mantine-color-error": "var(--lw-bad)",
  "--mantine-color-default": "var(--lw-surface)",
  "--mantine-color-default-hover": "var(--lw-raised)",
  "--mantine-color-default-color": "var(--lw-ink)",
  "--mantine-color-default-border": "var(--lw-line-strong)",
} as const;

/** Puts the palette of each scheme, and Mantine's own colours from it, on the root element. */
export const resolveCssVariables: CSSVariablesResolver = () => ({
  variables: {},
  light: { ...LIGHT_PALETTE, ...MANTINE_FROM_PALETTE },
  dark: { ...DARK_PALETTE, ...MANTINE_FROM_PALETTE },
});
