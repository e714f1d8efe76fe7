import { createHash } from "node:crypto";
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
import {
  type FirstResult,
  listFirstResults,
  readFirstHandIns,
} from "@/lib/workflows/evidence/list-first-hand-ins";

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

type Dismissals = readonly { id: string; view: string; x: number; y: number; students: number }[];

async function build(stone: StoneWithParts, first: readonly FirstResult[], dismissals: Dismissals) {
  const { characteristics } = resolveTerms(parseColumn(TrayTermsSchema, stone.tray.terms, "Tray.terms"));
  const surfaces = [...characteristics.values()].filter((one) => one.class === "surface");
  const [latest] = stone.references;
  return buildStoneEvidence({
    handIns: await readFirstHandIns(first),
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

/** The evidence of so many stones is remembered. */
const MOST_KEPT = 80;
const kept = new Map<string, { key: string; evidence: StoneEvidence }>();

/**
 * The evidence of a stone that was looked up, as it stands now; worked out again when a result, the reference, the stone, its
 * tray's terms or a dismissal is another. The caller has asked lib/access.
 */
export async function readStoneEvidence(stone: StoneWithParts): Promise<StoneEvidence> {
  const dismissals = await getDatabase().evidenceDismissal.findMany({
    where: { stoneId: stone.id },
    orderBy: { id: "asc" },
  });
  const first = await listFirstResults(stone.id);
  const hash = createHash("sha256");
  hash.update(`${stone.references[0]?.id} ${stone.revision} ${JSON.stringify(stone.tray.terms)}\n`);
  for (const { id } of dismissals) hash.update(`${id}\n`);
  for (const id of first.map((one) => one.id).sort()) hash.update(`${id}\n`);
  const key = hash.digest("base64");
  const known = kept.get(stone.id);
  if (known?.key === key) return known.evidence;
  const evidence = await build(stone, first, dismissals);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(stone.id, { key, evidence });
  return evidence;
}
