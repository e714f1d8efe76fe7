import { buildStoneEvidence } from "@/lib/agreement/build-stone-evidence";
import type { StoneEvidence } from "@/lib/agreement/stone-evidence";
import { getDatabase } from "@/lib/data/store/database";
import type { StoneWithParts } from "@/lib/data/store/find-stone";
import { parseColumn } from "@/lib/data/store/parse-column";
import { getSolid } from "@/lib/gem/build-solid";
import { drawView } from "@/lib/gem/draw-view";
import type { Point } from "@/lib/gem/point";
import { resolveTerms, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { ViewSchema } from "@/lib/plot/mark";
import { ReferenceSchema, type StoneBody, StoneBodySchema } from "@/lib/plot/stone";
import { listFirstHandIns } from "@/lib/workflows/evidence/list-first-hand-ins";

/** Counted as inside, but left by a blow to the surface (common practice, no source). */
const BLOWS = ["chip", "bruise", "cavity"];

/** The shoelace area of a closed outline. */
function getArea(outline: readonly Point[]): number {
  const sum = outline.reduce((total, [x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length] ?? [x, y];
    return total + x * nextY - nextX * y;
  }, 0);
  return Math.abs(sum) / 2;
}

function getViewArea({ cut, proportions }: StoneBody): number {
  return getArea(drawView(getSolid(cut, proportions), "crown").outline);
}

/** The evidence of a stone that was looked up, as it stands now. The caller has asked lib/access. */
export async function readStoneEvidence(stone: StoneWithParts): Promise<StoneEvidence> {
  const { characteristics } = resolveTerms(parseColumn(TrayTermsSchema, stone.tray.terms, "Tray.terms"));
  const surfaces = [...characteristics.values()].filter((one) => one.class === "surface");
  const [latest] = stone.references;
  const dismissals = await getDatabase().evidenceDismissal.findMany({ where: { stoneId: stone.id } });
  return buildStoneEvidence({
    handIns: await listFirstHandIns(stone.id),
    reference: latest === undefined ? null : parseColumn(ReferenceSchema, latest.body, "Reference.body"),
    area: getViewArea(parseColumn(StoneBodySchema, stone.body, "Stone.body")),
    damage: new Set([...surfaces.map(({ name }) => name), ...BLOWS]),
    dismissals: dismissals.map(({ view, x, y, students }) => ({
      view: ViewSchema.parse(view),
      at: [x, y],
      students,
    })),
  });
}
