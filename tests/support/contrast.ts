/** Contrast of two colours: WCAG 2.2, relative luminance and contrast ratio (w3c/wcag guidelines, threshold 0.04045). */

function toLinear(channel: number): number {
  const share = channel / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

function toLuminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
    toLinear(Number.parseInt(hex.slice(at, at + 2), 16)),
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** 1 … 21 for two `#rrggbb` colours, in any order. */
export function getContrast(a: string, b: string): number {
  const [low = 0, high = 0] = [toLuminance(a), toLuminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}
