/**
 * A simulated student's sitting on one stone: the plot, the log of how it came about, and the truth of what each mark
 * came from. The error model and its numbers are invented (see student-skill); the same seed gives the same bytes.
 */
import { createSeededRandom, type SeededRandom } from "@/lib/base/seeded-random";
import type { DraftMark } from "@/lib/demo/draft-mark";
import { keepOnStone } from "@/lib/demo/draw-shape";
import type { FeatureImage } from "@/lib/demo/feature-image";
import { type GroundTruth, type MarkOrigin, type MissReason, wrapTurnDeg } from "@/lib/demo/ground-truth";
import { logSitting } from "@/lib/demo/log-sitting";
import { simulateFeatures } from "@/lib/demo/simulate-features";
import { simulateGrades } from "@/lib/demo/simulate-grades";
import { simulateBeliefs, simulateDust, simulateEchoes, simulateGlints } from "@/lib/demo/simulate-strays";
import type { SimulationTerms } from "@/lib/demo/simulation-terms";
import type { StudentSkill } from "@/lib/demo/student-skill";
import { findSymmetryTurns } from "@/lib/gem/find-symmetry-turns";
import { toOtherView, turnPoint } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import type { CharacteristicTable } from "@/lib/plot/characteristic";
import type { Scales } from "@/lib/plot/grades";
import type { Plot } from "@/lib/plot/plots-file";
import { mapVertices } from "@/lib/plot/shape";
import { rebuildSitting, type SittingEvent } from "@/lib/plot/sitting-event";
import type { Stone } from "@/lib/plot/stone";

/** The stone with everything that is worked out from it once and used for every student. */
export interface SimulatedStone {
  readonly stone: Stone;
  readonly solid: Solid;
  readonly characteristics: CharacteristicTable;
  readonly scales: Scales;
  /** Direct images and echoes of the inside features; empty: nobody draws an echo. */
  readonly images: readonly FeatureImage[];
}

export interface SimulatedSitting {
  readonly plot: Plot;
  /** Rebuilding them gives `plot`. */
  readonly events: readonly SittingEvent[];
  readonly handedInAtMs: number;
  readonly truth: GroundTruth;
}

interface Hold {
  readonly turnDeg: number;
  readonly isPavilionMirrored: boolean;
}

function drawHold(random: SeededRandom, solid: Solid, skill: StudentSkill): Hold {
  const turns = findSymmetryTurns(solid);
  const others = turns.filter((turnDeg) => turnDeg !== 0);
  const halfStepDeg = 180 / turns.length;
  let turnDeg = 0;
  if (others.length > 0 && random.chance(skill.turning)) turnDeg = random.pick(others);
  else if (random.chance(skill.halfFacetOff)) turnDeg = random.chance(0.5) ? halfStepDeg : -halfStepDeg;
  return { turnDeg, isPavilionMirrored: random.chance(skill.mirroring) };
}

/** The draft as it comes to lie on the sheet of a student who holds the stone so. */
function holdDraft(draft: DraftMark, { turnDeg, isPavilionMirrored }: Hold, solid: Solid): DraftMark {
  const turned = mapVertices(draft.shape, (point) => turnPoint(draft.view, point, turnDeg));
  const isMirrored = isPavilionMirrored && draft.view === "pavilion";
  const shape = isMirrored ? mapVertices(turned, toOtherView) : turned;
  return { ...draft, shape: keepOnStone(solid, draft.view, shape) };
}

const listReferences = (origin: MarkOrigin): readonly string[] => {
  if (origin.kind === "merged") return origin.references;
  return origin.kind === "feature" ? [origin.reference] : [];
};

function listMissed(stone: Stone, kept: readonly MarkOrigin[], ever: readonly MarkOrigin[]) {
  const has = new Set(kept.flatMap(listReferences));
  const had = new Set(ever.flatMap(listReferences));
  return stone.marks.flatMap(({ id }): { reference: string; why: MissReason }[] =>
    has.has(id) ? [] : [{ reference: id, why: had.has(id) ? "taken-back" : "not-seen" }],
  );
}

function simulateDrafts(terms: SimulationTerms, isCleaned: boolean): DraftMark[] {
  const features = simulateFeatures(terms);
  const seen = new Set(features.flatMap(({ origin }) => listReferences(origin)));
  return [
    ...features,
    ...simulateEchoes(terms, seen),
    ...simulateGlints(terms),
    ...simulateBeliefs(terms),
    ...simulateDust(terms, isCleaned),
  ];
}

/** Simulates one sitting. Deterministic in all of its input; never throws for a stone that the schemas admit. */
export function simulateSitting(
  simulated: SimulatedStone,
  skill: StudentSkill,
  seed: number | string,
): SimulatedSitting {
  const { stone, solid, scales } = simulated;
  const random = createSeededRandom(seed);
  const hold = drawHold(random, solid, skill);
  const isCleaned = random.chance(skill.wiping);
  const drafts = simulateDrafts({ ...simulated, random, skill }, isCleaned);
  const seen = new Set(drafts.flatMap(({ origin }) => listReferences(origin)));
  const grades = simulateGrades(random, stone.grades, scales, skill, {
    isDecidingMarkOverlooked: stone.marks.some(({ id, decidesGrade }) => decidesGrade && !seen.has(id)),
    strays: drafts.filter(({ origin }) => origin.kind === "stray").length,
  });
  const held = drafts.map((draft) => holdDraft(draft, hold, solid));
  const { events, handedInAtMs, origins } = logSitting(random, held, grades, skill, isCleaned);
  const { plot } = rebuildSitting(events);
  const kept = plot.marks.map(({ id }) => ({ mark: id, origin: origins.get(id) as MarkOrigin }));
  return {
    plot,
    events,
    handedInAtMs,
    truth: {
      heldTurnDeg: hold.turnDeg,
      layBackTurnDeg: wrapTurnDeg(-hold.turnDeg),
      isPavilionMirrored: hold.isPavilionMirrored,
      origins: kept,
      missed: listMissed(
        stone,
        kept.map(({ origin }) => origin),
        [...origins.values()],
      ),
    },
  };
}
