/** A QR code as one path, a unit a module, so that it prints crisp at any size. */
import QRCode from "qrcode";

export interface QrDrawing {
  /** Modules along a side, without the quiet zone. */
  readonly size: number;
  /** SVG path of the dark modules. */
  readonly path: string;
}

/** Draws a text, correction level M: a label gets scratched (ISO/IEC 18004 asks for a quiet zone of 4 modules around). */
export function drawQr(text: string): QrDrawing {
  const { size, data } = QRCode.create(text, { errorCorrectionLevel: "M" }).modules;
  let path = "";
  for (let row = 0; row < size; row += 1) {
    for (let start = 0; start < size; start += 1) {
      if (!data[row * size + start]) continue;
      let end = start;
      while (end + 1 < size && data[row * size + end + 1]) end += 1;
      path += `M${start} ${row}h${end - start + 1}v1h${start - end - 1}z`;
      start = end;
    }
  }
  return { size, path };
}
