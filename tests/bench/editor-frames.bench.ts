/**
 * The editor at 500 marks in Chromium. Needs a page that shows it: LOUPEWORK_EDITOR_URL, an address of a running
 * program; without one there is nothing to measure.
 */
import { measureEditorFrames } from "@/tests/bench/measure-editor-frames";
import type { Figure } from "@/tests/bench/run";

export default async function measure(): Promise<Figure[]> {
  const url = process.env.LOUPEWORK_EDITOR_URL;
  if (url === undefined) {
    console.log("  not measured: set LOUPEWORK_EDITOR_URL to a page that shows the editor");
    return [];
  }
  return measureEditorFrames(url);
}
