import { type DocumentProps, renderToBuffer } from "@react-pdf/renderer";
import type { ReactElement } from "react";
import { registerFonts } from "@/components/paper/register-fonts";

/** A document as the bytes of a PDF. */
export async function renderPaper(paper: ReactElement<DocumentProps>): Promise<Uint8Array<ArrayBuffer>> {
  registerFonts();
  return new Uint8Array(await renderToBuffer(paper));
}
