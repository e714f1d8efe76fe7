import { AppError, type Fault } from "@/lib/base/app-error";
import { assembleSolid } from "@/lib/gem/assemble-solid";
import { CUT_LABELS, type CutName } from "@/lib/gem/cut-name";
import type { CutPlan } from "@/lib/gem/cut-plan";
import type { FacetPlane } from "@/lib/gem/facet-plane";
import { planCushion, planHeart, planMarquise, planPear } from "@/lib/gem/plan-curved";
import { planCustom } from "@/lib/gem/plan-custom";
import { planOval, planRoundBrilliant } from "@/lib/gem/plan-ellipse";
import { planPrincess } from "@/lib/gem/plan-princess";
import { planRadiant } from "@/lib/gem/plan-radiant";
import { planBaguette, planEmerald } from "@/lib/gem/plan-step";
import { getProportions, type Proportions } from "@/lib/gem/proportions";
import type { Facet, Solid } from "@/lib/gem/solid";
import type { Vec3 } from "@/lib/gem/vec3";

export type { Solid } from "@/lib/gem/solid";

const PLANNERS: Readonly<Record<CutName, (proportions: Proportions) => CutPlan>> = {
  "round-brilliant": planRoundBrilliant,
  oval: planOval,
  marquise: planMarquise,
  pear: planPear,
  heart: planHeart,
  cushion: planCushion,
  princess: planPrincess,
  radiant: planRadiant,
  emerald: planEmerald,
  "square-emerald": planEmerald,
  baguette: planBaguette,
  custom: planCustom,
};

/** Which number is to blame, as a rule, when facets of a kind find no room. */
function getBlamedKey(kind: string): string {
  if (kind === "star" || kind === "upper-girdle") return "starPct";
  if (kind === "table" || kind === "bezel") return "tablePct";
  if (kind === "lower-girdle" || kind === "pavilion-main") return "lowerHalfPct";
  if (kind.startsWith("crown-")) return "crownSteps";
  if (kind.startsWith("pavilion-")) return "pavilionSteps";
  if (kind.includes("chevron")) return "chevrons";
  if (kind === "culet") return "culetPct";
  return "girdlePct";
}

function refuseVanished(cut: CutName, vanished: readonly FacetPlane[]): void {
  if (vanished.length === 0) return;
  const kinds = [...new Set(vanished.map((plane) => plane.kind))];
  const faults: Fault[] = kinds.map((kind) => ({
    path: getBlamedKey(kind),
    message: `these proportions leave no room for the ${kind.replaceAll("-", " ")} facets`,
  }));
  const label = CUT_LABELS[cut].toLowerCase();
  throw new AppError(
    "bad-input",
    `No ${label} can be cut to these proportions: ${faults[0]?.message}.`,
    faults,
  );
}

function getRange(values: readonly number[]): { low: number; high: number } {
  return { low: Math.min(...values), high: Math.max(...values) };
}

/** The girdle's lower and upper edge; a knife edge lies at z = 0. */
function getGirdleRange(vertices: readonly Vec3[], facets: readonly Facet[]) {
  const onGirdle = facets.filter((facet) => facet.side === "girdle").flatMap((facet) => facet.vertices);
  if (onGirdle.length === 0) return { low: 0, high: 0 };
  return getRange(onGirdle.map((index) => (vertices[index] as Vec3)[2]));
}

/**
 * The solid of a cut. Pure: the same input gives the same numbers. `given` may leave out any proportion; the
 * cut's standard value stands in. Throws AppError "bad-input" for a number out of its range and for numbers
 * that together leave no room for a facet; the path of each fault is the key to blame.
 */
export function buildSolid(cut: CutName, given: Proportions = {}): Solid {
  const proportions = getProportions(cut, given);
  const plan = PLANNERS[cut](proportions);
  const { vertices, facets, vanished } = assembleSolid(plan);
  refuseVanished(cut, vanished);
  const girdle = getGirdleRange(vertices, facets);
  const height = getRange(vertices.map(([, , z]) => z));
  return {
    cut,
    proportions,
    vertices,
    facets,
    outline: [...plan.outline].reverse(),
    crownHeight: height.high - girdle.high,
    pavilionDepth: girdle.low - height.low,
    girdleThickness: girdle.high - girdle.low,
    isCleft: plan.isCleft,
  };
}

const CAPACITY = 200;
const kept = new Map<string, Solid>();

/** Cut and proportions as one text; the order of keys does not matter. */
function toSolidKey(cut: CutName, proportions: Proportions): string {
  const entries = Object.entries(proportions).filter(([, value]) => value !== undefined);
  return JSON.stringify([cut, entries.sort(([a], [b]) => (a < b ? -1 : 1))]);
}

/**
 * As `buildSolid`, remembering the last 200 stones; equal input gives the same object, so what is worked out
 * from a solid can be remembered with it. Throws as `buildSolid` does.
 */
export function getSolid(cut: CutName, proportions: Proportions = {}): Solid {
  const key = toSolidKey(cut, proportions);
  const known = kept.get(key);
  if (known !== undefined) {
    kept.delete(key);
    kept.set(key, known);
    return known;
  }
  const solid = buildSolid(cut, proportions);
  kept.set(key, solid);
  if (kept.size > CAPACITY) {
    const oldest = kept.keys().next().value;
    if (oldest !== undefined) kept.delete(oldest);
  }
  return solid;
}
