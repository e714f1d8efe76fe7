/** What a label holds: its code, and the QR code, read back by a decoder that is none of ours (jsqr). */
import { randomUUID } from "node:crypto";
import jsQR from "jsqr";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { drawQr } from "@/components/tray/draw-qr";
import { readStoneCode, toScanAddress, toStoneCode } from "@/lib/plot/stone-code";

describe("the code", () => {
  it("leads back to the beginning of the id, as it is scanned or typed", () => {
    for (let i = 0; i < 200; i += 1) {
      const id = randomUUID();
      const code = toStoneCode(id);
      const start = id.slice(0, 11);
      expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
      const typed = [
        code,
        code.toLowerCase(),
        code.replace("-", " "),
        ` ${code.replace("-", "")} `,
        toScanAddress("https://school.test/", code),
        `${toScanAddress("https://school.test", code)}?x=1`,
        code.replaceAll("0", "O").replaceAll("1", "l"),
      ];
      for (const text of typed) expect(readStoneCode(text), text).toBe(start);
    }
  });

  it.each(["", "A-03", "7K3M-9QX", "7K3M-9QXAA", "7K3M-9QXU", "https://elsewhere.test/", "%%%%-%%%%"])(
    "is none: %s",
    (text) => expect(readStoneCode(text)).toBeNull(),
  );
});

/** The label's drawing as it is printed, as pixels. */
async function printQr(text: string): Promise<{ data: Uint8ClampedArray; width: number; height: number }> {
  const { size, path } = drawQr(text);
  const side = size + 8;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${side * 5}" height="${side * 5}" viewBox="-4 -4 ${side} ${side}" shape-rendering="crispEdges"><rect x="-4" y="-4" width="${side}" height="${side}" fill="#fff"/><path d="${path}" fill="#000"/></svg>`;
  const { data, info } = await sharp(Buffer.from(svg))
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data: new Uint8ClampedArray(data), width: info.width, height: info.height };
}

describe("the QR code", () => {
  it("reads as the address of the stone's scan page", async () => {
    for (const base of ["http://127.0.0.1:3000", "https://loupe.a-school-with-a-long-name.example/program"]) {
      const address = toScanAddress(base, toStoneCode(randomUUID()));
      const { data, width, height } = await printQr(address);
      expect(jsQR(data, width, height)?.data).toBe(address);
    }
  });
});
