/** A stone and its reference, made ready for scoring once and remembered (SPEC 0.3). */
import { getSolid, type Solid } from "@/lib/gem/build-solid";
import { findSymmetryTurns } from "@/lib/gem/find-symmetry-turns";
import type { View } from "@/lib/gem/point";
import type { CharacteristicTable } from "@/lib/plot/characteristic";
import { compareIds } from "@/lib/plot/compare-ids";
import type { Decoy, ReferenceMark } from "@/lib/plot/mark";
import type { Reference, StoneBody } from "@/lib/plot/stone";
import { type MarkGeometry, measureShape } from "@/lib/scoring/mark-geometry";
import { rateType } from "@/lib/scoring/rate-pair";
import { type Echo, findMarkOptics, type StandIn } from "@/lib/scoring/stone-optics";

/** One reference mark with all that is measured of it. */
export interface ReferenceModel {
  readonly mark: ReferenceMark;
  readonly weight: number;
  readonly optional: boolean;
  readonly inside: boolean;
  readonly geometry: MarkGeometry;
  readonly standIns: readonly StandIn[];
}

/** A place where a plotted mark may be matched: a reference mark in its own view, or a stand-in in the other. */
export interface Target {
  /** Index into `marks`. */
  readonly reference: number;
  readonly geometry: MarkGeometry;
  readonly isStandIn: boolean;
}

/** How many numbers of a target the sweep of turns reads. */
export const SWEEP_STRIDE = 7;

/** What the sweep of turns reads some thousand times a plot, laid side by side. */
export interface SweepTargets {
  readonly targets: readonly Target[];
  /** Radius, reach, x, y and angle of a target, the weight of its mark (0 for an optional one), the logarithm of its extent. */
  readonly numbers: Float64Array;
}

export interface PlacedEcho extends Echo {
  /** Index into `marks`. */
  readonly reference: number;
}

export interface PreparedReference {
  readonly stoneId: string;
  readonly stone: StoneBody;
  readonly reference: Reference;
  readonly solid: Solid;
  /** The cut's own turns, the smallest first and clockwise before counter-clockwise; 0 is the first. */
  readonly turns: readonly number[];
  /** In the order of their ids. */
  readonly marks: readonly ReferenceModel[];
  readonly decoys: readonly { readonly decoy: Decoy; readonly geometry: MarkGeometry }[];
  readonly targets: Readonly<Record<View, readonly Target[]>>;
  readonly sweep: Readonly<Record<View, SweepTargets>>;
  readonly echoes: Readonly<Record<View, readonly PlacedEcho[]>>;
  /** Of the marks that are not optional. */
  readonly weightSum: number;
  /** Type credit of a plotted characteristic for each mark, by index. */
  readonly getTypes: (plotted: string) => Float64Array;
}

export interface ReferenceSource {
  readonly stoneId: string;
  readonly stone: StoneBody;
  readonly reference: Reference;
  readonly characteristics: CharacteristicTable;
}

function listModels({ stone, reference, characteristics }: ReferenceSource, solid: Solid) {
  const marks = [...reference.marks].sort((a, b) => compareIds(a.id, b.id));
  const echoes: Record<View, PlacedEcho[]> = { crown: [], pavilion: [] };
  const targets: Record<View, Target[]> = { crown: [], pavilion: [] };
  const models = marks.map((mark, index): ReferenceModel => {
    const geometry = measureShape(mark.shape);
    const inside = characteristics.get(mark.characteristic)?.class === "inside";
    const optics = findMarkOptics(mark, geometry, inside, solid, stone.refractiveIndex);
    targets[mark.view].push({ reference: index, geometry, isStandIn: false });
    const other = mark.view === "crown" ? "pavilion" : "crown";
    for (const { geometry } of optics.standIns) {
      targets[other].push({ reference: index, geometry, isStandIn: true });
    }
    for (const echo of optics.echoes) echoes[echo.view].push({ ...echo, reference: index });
    const { weight = 1, optional = false } = mark;
    return { mark, weight, optional, inside, geometry, standIns: optics.standIns };
  });
  return { models, echoes, targets };
}

/** Type credits, worked out once for each plotted characteristic. */
function rememberTypes(models: readonly ReferenceModel[], characteristics: CharacteristicTable) {
  const known = new Map<string, Float64Array>();
  return (plotted: string) => {
    let types = known.get(plotted);
    if (types === undefined) {
      types = Float64Array.from(models, ({ mark }) =>
        rateType(mark.characteristic, plotted, characteristics),
      );
      known.set(plotted, types);
    }
    return types;
  };
}

function toSweepTargets(targets: readonly Target[], models: readonly ReferenceModel[]): SweepTargets {
  const numbers = targets.flatMap(({ reference, geometry }) => {
    const model = models[reference];
    const { radius, reach, centreX, centreY, angle, logExtent } = geometry;
    const weight = model === undefined || model.optional ? 0 : model.weight;
    return [radius, reach, centreX, centreY, angle, weight, logExtent];
  });
  return { targets, numbers: Float64Array.from(numbers) };
}

function buildPrepared(source: ReferenceSource): PreparedReference {
  const { stoneId, stone, reference, characteristics } = source;
  const solid = getSolid(stone.cut, stone.proportions);
  const { models, echoes, targets } = listModels(source, solid);
  const decoys = [...reference.decoys].sort((a, b) => compareIds(a.id, b.id));
  return {
    stoneId,
    stone,
    reference,
    solid,
    turns: findSymmetryTurns(solid),
    marks: models,
    decoys: decoys.map((decoy) => ({ decoy, geometry: measureShape(decoy.shape) })),
    targets,
    sweep: {
      crown: toSweepTargets(targets.crown, models),
      pavilion: toSweepTargets(targets.pavilion, models),
    },
    echoes,
    weightSum: models.reduce((sum, { weight, optional }) => (optional ? sum : sum + weight), 0),
    getTypes: rememberTypes(models, characteristics),
  };
}

const prepared = new WeakMap<Reference, { source: ReferenceSource; value: PreparedReference }>();

/**
 * Measures a reference: shapes, symmetry turns, images in the other view, echoes. Remembered with the reference
 * object, so that whoever scores many plots by one reference should keep that object. Throws AppError "bad-input"
 * for proportions that make no stone.
 */
export function prepareReference(source: ReferenceSource): PreparedReference {
  const known = prepared.get(source.reference);
  if (
    known !== undefined &&
    known.source.stoneId === source.stoneId &&
    known.source.stone === source.stone &&
    known.source.characteristics === source.characteristics
  ) {
    return known.value;
  }
  const value = buildPrepared(source);
  prepared.set(source.reference, { source, value });
  return value;
}
