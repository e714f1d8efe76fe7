/** What all papers have in common, in points. */
import { StyleSheet } from "@react-pdf/renderer";
import type { PaperSize } from "@/components/paper/paper-size";
import { PAPER_FONTS } from "@/components/paper/register-fonts";

export const MM = 72 / 25.4;
export const INK = "#171c20";
export const MUTED = "#525e66";
export const LINE = "#98a5ac";

/** Width and height in points (ISO 216 A4; ANSI Letter), and the margin all round. */
export const PAPER_POINTS: Readonly<Record<PaperSize, readonly [number, number]>> = {
  a4: [210 * MM, 297 * MM],
  letter: [8.5 * 72, 11 * 72],
};
export const MARGIN = 13 * MM;

export const styles = StyleSheet.create({
  page: {
    padding: MARGIN,
    paddingBottom: MARGIN + 14,
    fontFamily: PAPER_FONTS as unknown as string,
    fontSize: 9.5,
    color: INK,
  },
  head: { flexDirection: "row", justifyContent: "space-between", alignItems: "flex-end", gap: 12 },
  title: { fontSize: 20, fontWeight: 700, lineHeight: 1.1 },
  heading: { fontSize: 11.5, fontWeight: 700, marginTop: 10, marginBottom: 3 },
  muted: { color: MUTED },
  rule: { borderBottomWidth: 0.8, borderBottomColor: INK, marginTop: 5, marginBottom: 7 },
  row: { flexDirection: "row", borderBottomWidth: 0.5, borderBottomColor: LINE, paddingVertical: 2.2 },
  headRow: { flexDirection: "row", borderBottomWidth: 0.8, borderBottomColor: INK, paddingVertical: 2 },
  foot: { position: "absolute", bottom: MARGIN - 8, fontSize: 8, color: MUTED },
});
