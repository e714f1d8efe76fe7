import { PAPER_LABELS, type PaperSize } from "@/components/paper/paper-size";
import { drawQr } from "@/components/tray/draw-qr";
import classes from "@/components/tray/label-sheet.module.css";
import { toScanAddress, toStoneCode } from "@/lib/plot/stone-code";

/** Modules of white round a QR code (ISO/IEC 18004). */
const QUIET = 4;

export interface LabelSheetProps {
  trayName: string;
  stones: readonly { readonly stoneId: string; readonly label: string; readonly position: number }[];
  /** Where people reach the program. */
  base: string;
  paper: PaperSize;
}

function Label({
  trayName,
  stone,
  base,
}: Pick<LabelSheetProps, "trayName" | "base"> & { stone: LabelSheetProps["stones"][number] }) {
  const code = toStoneCode(stone.stoneId);
  const { size, path } = drawQr(toScanAddress(base, code));
  const side = size + 2 * QUIET;
  return (
    <li className={classes.label}>
      <svg
        className={classes.code}
        viewBox={`${-QUIET} ${-QUIET} ${side} ${side}`}
        shapeRendering="crispEdges"
        role="img"
        aria-label={`QR code of ${stone.label}`}
      >
        <rect x={-QUIET} y={-QUIET} width={side} height={side} fill="#ffffff" />
        <path d={path} fill="#000000" />
      </svg>
      <span className={classes.words}>
        <strong className={classes.name}>{stone.label}</strong>
        <span>{trayName}</span>
        <span>place {stone.position}</span>
        <span className={classes.typed}>{code}</span>
      </span>
    </li>
  );
}

/** The labels of a tray's stones, to print and cut: QR code, label, place, and the code to type where nothing scans. */
export function LabelSheet({ trayName, stones, base, paper }: LabelSheetProps) {
  return (
    <>
      <style>{`@page { size: ${PAPER_LABELS[paper]} portrait; margin: 10mm; }`}</style>
      <ul className={classes.sheet} data-paper={paper} aria-label="Labels">
        {stones.map((stone) => (
          <Label key={stone.stoneId} trayName={trayName} stone={stone} base={base} />
        ))}
      </ul>
    </>
  );
}
