/** Hands a drawing of the page to the browser as a file of its own. Browser only. */
import { downloadText } from "@/components/ui/download-text";

const VARIABLE = /var\((--[\w-]+)\)/g;
/** A saved picture has this many dots for each unit of the drawing. */
const PNG_SCALE = 3;

/** The drawing as a text that stands alone: the theme's paints written out, on the page's own surface. */
export function toStandaloneSvg(drawing: SVGSVGElement, read: (variable: string) => string): string {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const { width, height } = drawing.viewBox.baseVal;
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height));
  copy.setAttribute("font-family", "system-ui, sans-serif");
  const ground = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  ground.setAttribute("width", "100%");
  ground.setAttribute("height", "100%");
  ground.setAttribute("fill", "var(--lw-surface)");
  copy.prepend(ground);
  return new XMLSerializer()
    .serializeToString(copy)
    .replace(VARIABLE, (_whole, variable: string) => read(variable));
}

async function savePng(svg: string, width: number, height: number, fileName: string): Promise<void> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = width * PNG_SCALE;
  canvas.height = height * PNG_SCALE;
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const link = document.createElement("a");
  link.href = canvas.toDataURL("image/png");
  link.download = `${fileName}.png`;
  link.click();
}

/** Saves the drawing as SVG or PNG in the paints of the theme that is on. */
export async function saveDrawing(
  drawing: SVGSVGElement,
  fileName: string,
  kind: "svg" | "png",
): Promise<void> {
  const style = getComputedStyle(document.documentElement);
  const svg = toStandaloneSvg(drawing, (variable) => style.getPropertyValue(variable).trim());
  const { width, height } = drawing.viewBox.baseVal;
  if (kind === "svg") downloadText(`${fileName}.svg`, "image/svg+xml;charset=utf-8", svg);
  else await savePng(svg, width, height, fileName);
}
