import type { DocumentProps } from "@react-pdf/renderer";
import type { ReactElement } from "react";
import { toRefusal } from "@/app/api/answer-json";
import { type PaperSize, readPaperSize } from "@/components/paper/paper-size";
import { renderPaper } from "@/components/paper/render-paper";

/** Answers with a PDF on the paper that the address asks for, or with a refusal. Nothing is drawn before access was asked. */
export async function answerPaper(
  request: Request,
  fileName: string,
  draw: (paper: PaperSize) => Promise<ReactElement<DocumentProps>>,
): Promise<Response> {
  try {
    const paper = readPaperSize(new URL(request.url).searchParams.get("paper"));
    const bytes = await renderPaper(await draw(paper));
    return new Response(bytes, {
      headers: {
        "Content-Type": "application/pdf",
        "Content-Disposition": `inline; filename="${fileName}"`,
        "Cache-Control": "no-store",
        "X-Content-Type-Options": "nosniff",
      },
    });
  } catch (thrown) {
    return toRefusal(thrown);
  }
}
